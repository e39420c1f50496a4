import { styleText } from "node:util";
import type { Shell } from "./shell.js";

export interface TextStyle {
  readonly width: number;
  /** Makes a heading stand out. */
  readonly heading: (text: string) => string;
}

const widthWithoutTerminal = 100;

export function textStyle(shell: Shell): TextStyle {
  return {
    width: Math.max(40, Math.min(shell.columns ?? widthWithoutTerminal, 120)),
    heading: (text) => (shell.color ? styleText("bold", text, { validateStream: false }) : text),
  };
}
