/** What the schema says of a place in the file. */
// @ts-nocheck

import type { KeyPath } from "./place-in-text.js";

export interface SchemaNode {
  readonly title?: string;
  readonly description?: string;
  readonly type?: string;
  readonly format?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly examples?: readonly unknown[];
  readonly required?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly items?: SchemaNode;
  readonly anyOf?: readonly SchemaNode[];
  readonly defaultSnippets?: readonly { readonly label: string; readonly description?: string }[];
}

export interface Word {
  readonly text: string;
  readonly about?: string;
}

/** The node at a path and, where there are several forms, each of them. */
export function formsAt(schema: SchemaNode, path: KeyPath): SchemaNode[] {
  let forms = formsOf(schema);
  for (const step of path)
    forms = forms.flatMap((form) => {
      const next = step === "[]" ? form.items : form.properties?.[step];
      return next === undefined ? [] : formsOf(next);
    });
  return forms;
}

function formsOf(node: SchemaNode): SchemaNode[] {
  return [node, ...(node.anyOf ?? []).flatMap(formsOf)];
}

/** Words that may stand there: all of a list, or some of many. */
export function wordsOf(form: SchemaNode): Word[] {
  const listed = [...(form.enum ?? []), ...(form.const === undefined ? [] : [form.const])];
  const offered = (form.defaultSnippets ?? []).map(({ label, description }) => ({
    text: label,
    ...(description === undefined ? {} : { about: description }),
  }));
  const truth = form.type === "boolean" && form.enum === undefined ? [true, false] : [];
  return [...[...listed, ...truth].map((word) => ({ text: String(word) })), ...offered];
}

/** Amounts show their unit by an example; a day of another year would only mislead. */
export function samplesOf(form: SchemaNode): string[] {
  if (form.format === undefined || noSample.has(form.format)) return [];
  return (form.examples ?? []).filter((one): one is string => typeof one === "string");
}

const noSample: ReadonlySet<string> = new Set(["day", "month-day", "clock", "sign", "weekday"]);

/** The forms that explain: of a value's forms the first has the words. */
export function explained(forms: readonly SchemaNode[]): SchemaNode | undefined {
  return forms.find(({ description }) => description !== undefined);
}
