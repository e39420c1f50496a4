/** Makes a sentence of an output's own kind, in which names may be marked up. */
// @ts-nocheck

export type Say<T> = (
  parts: TemplateStringsArray,
  ...values: readonly (T | string | number)[]
) => T;

/** As a sentence that others may follow. */
export function closed(text: string): string {
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

/** As a sentence or a title begins. */
export function capital(text: string): string {
  return text.charAt(0).toLocaleUpperCase("en") + text.slice(1);
}

export const plain: Say<string> = (parts, ...values) => String.raw({ raw: parts }, ...values);
