/** What is offered where the cursor stands: keys, words, ids of the file, whole beds and plantings. */
// @ts-nocheck

import {
  type Completion,
  type CompletionContext,
  type CompletionResult,
  type CompletionSource,
  snippetCompletion,
  startCompletion,
} from "@codemirror/autocomplete";
import type { EditorView } from "@codemirror/view";
import { idsIn } from "./ids.js";
import { type PlaceInText, placeInText } from "./place-in-text.js";
import { formsAt, samplesOf, type SchemaNode, wordsOf } from "./schema-words.js";

export function offers(schema: SchemaNode): CompletionSource {
  return (context: CompletionContext): CompletionResult | null => {
    const text = context.state.doc.toString();
    const place = placeInText(text, context.pos);
    const typed = text.slice(place.from, context.pos);
    if (/[#"']/.test(typed)) return null;
    const forms = formsAt(schema, place.path);
    const isItem = place.at === "key" && place.path.at(-1) === "[]";
    const words = place.at === "value" || isItem ? valuesOf(forms, place, context) : [];
    const options =
      place.at === "key" ? [...wholeOf(place, text), ...keysOf(forms, place), ...words] : words;
    if (options.length === 0) return null;
    // A blank line is left alone until something is typed or asked for.
    if (!context.explicit && place.at === "key" && typed === "") return null;
    return { from: place.from, options, validFor: /^[\p{L}\p{N} _'./-]*$/u };
  };
}

function keysOf(forms: readonly SchemaNode[], { taken, isFlow }: PlaceInText): Completion[] {
  return forms.flatMap(({ properties = {}, required = [] }) =>
    Object.entries(properties)
      .filter(([key]) => !taken.has(key))
      .map(([key, node]) => ({
        label: key,
        detail: node.title ?? "",
        info: node.description ?? "",
        boost: required.includes(key) ? 10 : 0,
        apply: (view: EditorView, _: Completion, from: number, to: number) => {
          const indent = (/^[\s-]*/.exec(view.state.doc.lineAt(from).text)?.[0].length ?? 0) + 2;
          insert(view, from, to, `${key}:${isFlow ? " " : behindKey(node, indent)}`);
        },
      })),
  );
}

/** What follows a key in block style, up to where its value is typed. */
function behindKey(node: SchemaNode, indent: number): string {
  const below = `\n${" ".repeat(indent)}`;
  if (node.properties !== undefined) return below;
  return node.items?.properties === undefined ? " " : `${below}- `;
}

/** Then what comes next is offered at once. */
function insert(view: EditorView, from: number, to: number, text: string): void {
  view.dispatch({
    changes: { from, to, insert: text },
    selection: { anchor: from + text.length },
    userEvent: "input.complete",
  });
  startCompletion(view);
}

function valuesOf(
  forms: readonly SchemaNode[],
  { path }: PlaceInText,
  { state }: CompletionContext,
): Completion[] {
  const words = forms.flatMap(wordsOf).map(({ text, about }) => ({
    label: text,
    ...(about === undefined ? {} : { detail: about }),
  }));
  const ids = idsIn(state, path).map((id) => ({ label: id, detail: "in this file" }));
  const samples = forms.flatMap(samplesOf).map((label) => ({ label, detail: "for example" }));
  const own = words.length + ids.length > 0 ? [] : samples;
  const seen = new Set<string>();
  return [...ids, ...words, ...own].filter(({ label }) => !seen.has(label) && seen.add(label));
}

/** A bed or a planting with what it needs, to be filled in field by field. */
function wholeOf({ path, isFlow, isLineStart, taken }: PlaceInText, text: string): Completion[] {
  if (isFlow || !isLineStart || taken.size > 0) return [];
  const list = path.at(-1) === "[]" ? path.at(-2) : undefined;
  const [, year = "2027"] = /\bfrom:\s*["']?(\d{4})/.exec(text) ?? [];
  const planting = (start: string): string =>
    `id: \${3:name}\n  crop: \${4:crop}\n  plants: \${5:6}\n  ${start}: \${6:${year}-05-20}`;
  if (list === "plantings")
    return ["transplanted", "sown"].map((start) =>
      snippetCompletion(planting(start), { label: `new planting, ${start}`, boost: 99 }),
    );
  if (list !== "beds") return [];
  const nested = planting("transplanted").replaceAll("\n", "\n    ");
  const bed = `id: \${1:bed}\n  area: \${2:4 m2}\n  plantings:\n    - ${nested}`;
  return [snippetCompletion(bed, { label: "new bed", boost: 99 })];
}
