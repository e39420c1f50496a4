/** What the pointer rests on, in the schema's words. */
// @ts-nocheck

import type { EditorState } from "@codemirror/state";
import { hoverTooltip, type Tooltip } from "@codemirror/view";
import type { Extension } from "@codemirror/state";
import { made } from "../dom.js";
import { placeInText } from "./place-in-text.js";
import { explained, formsAt, type SchemaNode } from "./schema-words.js";

interface Explanation {
  readonly title: string;
  readonly about: string;
}

/** Of the key at a place, or of the key whose value stands there. */
function explanationAt(
  state: EditorState,
  schema: SchemaNode,
  offset: number,
): Explanation | undefined {
  const text = state.doc.toString();
  const place = placeInText(text, offset);
  const path =
    place.at === "value"
      ? place.path.filter((step, i) => step !== "[]" || i < place.path.length - 1)
      : [...place.path, /^["']?([\w-]+)["']?\s*:/.exec(text.slice(place.from))?.[1] ?? ""];
  const { title, description } = explained(formsAt(schema, path)) ?? {};
  return description === undefined ? undefined : { title: title ?? "", about: description };
}

export function explanations(schema: SchemaNode): Extension {
  return hoverTooltip((view, pos): Tooltip | null => {
    const word = view.state.wordAt(pos);
    const found = explanationAt(view.state, schema, word?.to ?? pos);
    if (word === null || found === undefined) return null;
    const dom = made(
      "div",
      { className: "explained" },
      made("strong", {}, found.title),
      " ",
      found.about,
    );
    return { pos: word.from, end: word.to, create: () => ({ dom }) };
  });
}
