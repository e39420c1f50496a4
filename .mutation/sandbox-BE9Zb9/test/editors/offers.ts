/** What a schema says to editors alone, made from the catalogue and from our own check's mends. */
// @ts-nocheck

import { compileCheck } from "../support/compile-check.js";
import { cropRows } from "../data/data-files.js";

interface Node {
  readonly type?: string;
  readonly format?: string;
  readonly pattern?: string;
  readonly enum?: unknown;
  readonly examples?: readonly unknown[];
}

export interface Offer {
  readonly label: string;
  readonly body: unknown;
  readonly description?: string;
}

/** Each name and other name of each crop, once; of other names, what the plan calls it. */
export const cropOffers: readonly Offer[] = cropRows
  .flatMap(({ name, also = [] }) => {
    const [, first, second] = /^(.*?)\s*\((.*)\)$/.exec(name) ?? [];
    const names = first === undefined || second === undefined ? [name] : [first, second];
    return [...new Set([...names, ...also])].map((word) => offerOf(word, name));
  })
  .sort((a, b) => (a.label < b.label ? -1 : 1));

function offerOf(word: string, name: string): Offer {
  return { label: word, body: word, ...(word === name ? {} : { description: name }) };
}

/** The schema with all that is made, in the form of its file before it is laid out. */
export function withOffers(text: string): string {
  const renewed: unknown = JSON.parse(text, (_, node: unknown) => {
    if (typeof node !== "object" || node === null || Array.isArray(node)) return node;
    const { $comment } = node as { $comment?: string };
    const message = messageOf(node);
    return {
      ...node,
      ...($comment === "the crop words, from the catalogue" && { defaultSnippets: cropOffers }),
      ...(message !== undefined && { errorMessage: message }),
    };
  });
  // A line each.
  return JSON.stringify(renewed, null, 2).replace(
    /\{\s+"label": ("[^"]*"),\s+"body": ("[^"]*")(?:,\s+"description": ("[^"]*"))?\s+\}/g,
    (_, label: string, body: string, description?: string) =>
      `{ "label": ${label}, "body": ${body}${description === undefined ? "" : `, "description": ${description}`} }`,
  );
}

/** What an editor says of a number where text belongs, in place of "Expected string". */
function messageOf(node: Node): string | undefined {
  if (node.type !== "string" || node.enum !== undefined) return undefined;
  if (node.format === "clock") return `Write it in quotes, like "${String(node.examples?.[0])}".`;
  if (node.pattern !== undefined)
    return "Use letters, digits, dots, dashes and underscores; put it in quotes if it is all digits.";
  if (node.format === undefined) return "Text is needed: put a number in quotes.";
  const [finding] = compileCheck(node)(9);
  if (finding === undefined) throw new Error("a text that may be a number");
  return `${finding.mend.charAt(0).toUpperCase()}${finding.mend.slice(1)}.`;
}
