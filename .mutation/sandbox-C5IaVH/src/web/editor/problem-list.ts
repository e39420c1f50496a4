/** The problems below the text, for fingers, keyboards and ears: a step to each, and its mend. */
// @ts-nocheck

import { forEachDiagnostic } from "@codemirror/lint";
import type { EditorView } from "@codemirror/view";
import type { Problem } from "../../problem.js";
import { button, made } from "../dom.js";
import { fixWords, mend } from "./marks.js";

/** Where its mark stands now: it moves with the text. */
function markOf(view: EditorView, problem: Problem): { from: number; to: number } | undefined {
  let found: { from: number; to: number } | undefined;
  forEachDiagnostic(view.state, ({ message }, from, to) => {
    if (message === `${problem.message}: ${problem.mend}`) found ??= { from, to };
  });
  return found;
}

export function problemList(): {
  readonly element: HTMLElement;
  readonly show: (view: EditorView, problems: readonly Problem[]) => void;
} {
  const element = made("ul", { className: "problem-list" });
  element.setAttribute("aria-label", "Problems in the file");
  const itemOf = (view: EditorView, problem: Problem): HTMLElement => {
    const step = button(`Line ${problem.at.line}`, () => {
      const mark = markOf(view, problem);
      view.dispatch({ selection: { anchor: mark?.from ?? 0 }, scrollIntoView: true });
      view.focus();
    });
    const { fix } = problem;
    const mending =
      fix === undefined
        ? []
        : [
            button(fixWords(fix), () => {
              const mark = markOf(view, problem);
              if (mark !== undefined) mend(view, mark.from, mark.to, fix);
            }),
          ];
    const words = made("span", { dir: "auto" }, `${problem.message}: ${problem.mend}`);
    return made("li", {}, step, words, ...mending);
  };
  return {
    element,
    show: (view, problems) => {
      element.replaceChildren(...problems.map((problem) => itemOf(view, problem)));
      element.hidden = problems.length === 0;
    },
  };
}
