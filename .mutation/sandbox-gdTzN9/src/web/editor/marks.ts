/** Problems under their words, each with its mend. */
// @ts-nocheck

import { type Action, type Diagnostic, setDiagnostics } from "@codemirror/lint";
import type { EditorState, Text, TransactionSpec } from "@codemirror/state";
import type { EditorView } from "@codemirror/view";
import type { Fix, Position, Problem } from "../../problem.js";

/** The text may have changed since it was checked: a place is kept within it. */
function offsetOf(doc: Text, { line, column }: Position): number {
  const { from, to } = doc.line(Math.min(Math.max(line, 1), doc.lines));
  return Math.min(from + column - 1, to);
}

/** From the place to the end of its word, or of its line's text. */
function spanOf(state: EditorState, { at, fix }: Problem): { from: number; to: number } {
  const from = offsetOf(state.doc, at);
  if (fix !== undefined) return { from, to: Math.max(from, offsetOf(state.doc, fix.to)) };
  const rest = state.sliceDoc(from, state.doc.lineAt(from).to);
  const [word = ""] = /^(?:"[^"]*"|'[^']*'|[^\s,:[\]{}#]+(?: [^\s,:[\]{}#]+)*)/.exec(rest) ?? [];
  return { from, to: from + word.length };
}

export function marked(state: EditorState, problems: readonly Problem[]): TransactionSpec {
  return setDiagnostics(
    state,
    problems.map((problem): Diagnostic => ({
      ...spanOf(state, problem),
      severity: "error",
      message: `${problem.message}: ${problem.mend}`,
      actions: problem.fix === undefined ? [] : [actionOf(problem.fix)],
    })),
  );
}

export function fixWords({ text }: Fix): string {
  return `Write ${text}`;
}

function actionOf(fix: Fix): Action {
  return {
    name: fixWords(fix),
    apply: (view, from, to) => {
      mend(view, from, to, fix);
    },
  };
}

/** One step that undo takes back. */
export function mend(view: EditorView, from: number, to: number, { text }: Fix): void {
  view.dispatch({
    changes: { from, to, insert: text },
    selection: { anchor: from + text.length },
    userEvent: "input.complete",
    scrollIntoView: true,
  });
  view.focus();
}
