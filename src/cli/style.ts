import { styleText } from "node:util";
import type { TextStyle } from "./plan-text.js";
import type { Shell } from "./shell.js";

const widthWithoutTerminal = 100;

export function textStyle(shell: Shell): TextStyle {
  return {
    width: Math.max(40, Math.min(shell.columns ?? widthWithoutTerminal, 120)),
    heading: (text) => (shell.color ? styleText("bold", text, { validateStream: false }) : text),
  };
}
