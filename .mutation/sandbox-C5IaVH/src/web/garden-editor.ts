/** What the page asks of an editor. */
// @ts-nocheck

import type { Problem } from "../problem.js";
import { made } from "./dom.js";

export interface EditorOptions {
  readonly text: string;
  /** For its styles. */
  readonly nonce: string;
  /** Of a garden file. */
  readonly schema: unknown;
  readonly onChange: (text: string) => void;
}

export interface GardenEditor {
  readonly element: HTMLElement;
  readonly text: () => string;
  readonly setText: (text: string) => void;
  /** Of the text that it shows. */
  readonly setProblems: (problems: readonly Problem[]) => void;
  /** They are told beside the text, each with its mend. */
  readonly listsProblems: boolean;
  readonly focus: () => void;
}

/** A plain field, where nothing better has come. */
export function plainEditor({ text, onChange }: EditorOptions): GardenEditor {
  const area = made("textarea", { value: text, spellcheck: false, className: "plain" });
  area.setAttribute("aria-label", "Garden file");
  area.addEventListener("input", () => {
    onChange(area.value);
  });
  return {
    element: area,
    text: () => area.value,
    setText: (fresh) => {
      area.value = fresh;
      onChange(fresh);
    },
    setProblems: (problems) => {
      area.setAttribute("aria-invalid", String(problems.length > 0));
    },
    listsProblems: false,
    focus: () => {
      area.focus();
    },
  };
}
