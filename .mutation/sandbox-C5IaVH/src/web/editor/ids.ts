/** Names that the file itself gives, for places that refer to them. */
// @ts-nocheck

import { syntaxTree } from "@codemirror/language";
import type { EditorState } from "@codemirror/state";
import type { SyntaxNode } from "@lezer/common";
import type { KeyPath } from "./place-in-text.js";

/** Key of a reference -> the lists whose ids, or names, it may give. */
const lists: Readonly<Record<string, readonly string[]>> = {
  planting: ["plantings"],
  bed: ["beds"],
  batch: ["batches"],
  feed: ["feeds"],
  for: ["plantings", "beds"],
};
const records = new Set(["log", "signs", "feeds"]);

export function idsIn(state: EditorState, path: KeyPath): string[] {
  const [record = "", ...rest] = path;
  const wanted = lists[rest.find((step) => step !== "[]") ?? ""];
  if (!records.has(record) || wanted === undefined) return [];
  const ids: string[] = [];
  syntaxTree(state).iterate({
    enter: ({ name, node }) => {
      if (name !== "Pair") return;
      const list = keyAbove(state, node);
      if (list === undefined || !wanted.includes(list)) return;
      const naming = list === "feeds" ? "name" : "id";
      if (keyOf(state, node) === naming) ids.push(valueOf(state, node));
    },
  });
  return ids.filter((id) => id !== "");
}

function keyOf(state: EditorState, pair: SyntaxNode): string {
  const key = pair.getChild("Key");
  return key === null ? "" : bare(state.sliceDoc(key.from, key.to));
}

function valueOf(state: EditorState, pair: SyntaxNode): string {
  const value = pair.getChild("Literal") ?? pair.getChild("QuotedLiteral");
  return value === null ? "" : bare(state.sliceDoc(value.from, value.to));
}

/** Of the pair in whose list this one stands. */
function keyAbove(state: EditorState, pair: SyntaxNode): string | undefined {
  for (let node = pair.parent; node !== null; node = node.parent)
    if (node.name === "Pair") return keyOf(state, node);
  return undefined;
}

function bare(text: string): string {
  return text.replace(/^(["'])(.*)\1$/, "$2");
}
