/** Makes a sentence of an output's own kind, in which names may be marked up. */
export type Say<T> = (
  parts: TemplateStringsArray,
  ...values: readonly (T | string | number)[]
) => T;

/** As a sentence that others may follow. */
export function closed(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

export const plain: Say<string> = (parts, ...values) => String.raw({ raw: parts }, ...values);
