/** The editor of a garden file: what the schema knows is offered, what the plan refuses is marked. */
// @ts-nocheck

import {
  autocompletion,
  closeBrackets,
  closeBracketsKeymap,
  completionKeymap,
} from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { yamlLanguage } from "@codemirror/lang-yaml";
import { indentUnit } from "@codemirror/language";
import { nextDiagnostic } from "@codemirror/lint";
import { EditorState } from "@codemirror/state";
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightActiveLineGutter,
  keymap,
  lineNumbers,
} from "@codemirror/view";
import { made } from "../dom.js";
import type { EditorOptions, GardenEditor } from "../garden-editor.js";
import { explanations } from "./explain.js";
import { look } from "./look.js";
import { marked } from "./marks.js";
import { offers } from "./offers.js";
import { problemList } from "./problem-list.js";
import type { SchemaNode } from "./schema-words.js";

const keys =
  "Ctrl+Space offers keys and words, F8 goes to the next problem, Ctrl+] and Ctrl+[ set lines in and out. Esc, then Tab leaves the text.";

export function gardenEditor({ text, nonce, schema, onChange }: EditorOptions): GardenEditor {
  const list = problemList();
  const hint = made("p", { className: "editor-keys", id: "editor-keys" }, keys);
  const view = new EditorView({
    state: EditorState.create({
      doc: text,
      extensions: [
        EditorView.cspNonce.of(nonce),
        EditorView.contentAttributes.of({
          "aria-label": "Garden file",
          tabindex: "0",
          "aria-describedby": hint.id,
          autocapitalize: "off",
          spellcheck: "false",
        }),
        lineNumbers(),
        highlightActiveLine(),
        highlightActiveLineGutter(),
        drawSelection(),
        history(),
        closeBrackets(),
        yamlLanguage,
        indentUnit.of("  "),
        look,
        explanations(schema as SchemaNode),
        autocompletion({
          override: [offers(schema as SchemaNode)],
          icons: false,
          interactionDelay: 0,
        }),
        // Tab is not among them: it leaves the editor.
        keymap.of([
          { key: "F8", run: nextDiagnostic },
          ...closeBracketsKeymap,
          ...completionKeymap,
          ...historyKeymap,
          ...defaultKeymap,
        ]),
        EditorView.updateListener.of(({ docChanged, state }) => {
          if (docChanged) onChange(state.doc.toString());
        }),
      ],
    }),
  });
  list.show(view, []);
  return {
    element: made("div", { className: "garden-editor" }, view.dom, list.element, hint),
    text: () => view.state.doc.toString(),
    setText: (fresh) => {
      view.dispatch({ changes: { from: 0, to: view.state.doc.length, insert: fresh } });
    },
    setProblems: (problems) => {
      view.dispatch(marked(view.state, problems));
      list.show(view, problems);
      // The list takes room from the text: the line that is being written stays in sight.
      if (view.hasFocus)
        view.dispatch({ effects: EditorView.scrollIntoView(view.state.selection.main.head) });
    },
    listsProblems: true,
    focus: () => {
      view.focus();
    },
  };
}
