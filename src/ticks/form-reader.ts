/** Takes the fields of a form one by one, and tells what is wrong with them. */
import { hiddenIn, legibleWord } from "../legible.js";
import type { Problem } from "../problem.js";
import { grouped } from "../values.js";

/** Names and values in their order, as in a form; a name may come again. */
export type Fields = readonly (readonly [name: string, value: string])[];

export type FormProblem = Pick<Problem, "code" | "message" | "mend">;

/** Undefined for what cannot be so. */
export type Read<T> = (text: string) => T | undefined;

export interface FormReader {
  /** One of that name must be there. */
  readonly needed: <T>(name: string, read: Read<T>) => T | undefined;
  /** One that is empty counts as none. */
  readonly optional: <T>(name: string, read: Read<T>) => T | undefined;
  /** As {@link optional}, but one that is empty is there. */
  readonly typed: (name: string, read: Read<string>) => string | undefined;
  readonly all: <T>(name: string, read: Read<T>) => readonly T[];
  readonly wrong: (message: string, mend: string) => void;
  /** What is wrong, fields that nobody asked for included. */
  readonly done: () => readonly FormProblem[];
}

/** More than any garden has. Our choice. */
const mostFields = 5000;
/** Longer ones are not told back. */
const mostName = 40;

export function formReader(fields: Fields): FormReader {
  const problems: FormProblem[] = [];
  const wrong = (message: string, mend: string): void => {
    problems.push({ code: "form", message, mend });
  };
  const wrongField = (name: string, what: string): void => {
    wrong(
      `the field \`${legibleWord(name.slice(0, mostName))}\` ${what}`,
      "open the page again, and mark it there",
    );
  };
  if (fields.length > mostFields)
    wrong(`the form has ${fields.length} fields`, "mark fewer beds at a time");
  const values = grouped(fields.slice(0, mostFields), ([name]) => name);
  const taken = (name: string): readonly string[] => {
    const found = (values.get(name) ?? []).map(([, value]) => value);
    values.delete(name);
    return found;
  };
  const one = (name: string): string | undefined => {
    const found = taken(name);
    if (found.length > 1) wrongField(name, "comes twice");
    return found[0];
  };
  const right = <T>(name: string, read: Read<T>, value: string): T | undefined => {
    const got = read(value);
    if (got === undefined) wrongField(name, "does not hold what it must");
    return got;
  };
  return {
    needed: (name, read) => {
      const value = one(name);
      if (value === undefined) wrongField(name, "is missing");
      return value === undefined ? undefined : right(name, read, value);
    },
    optional: (name, read) => {
      const value = one(name);
      return value === undefined || value.trim() === "" ? undefined : right(name, read, value);
    },
    typed: (name, read) => {
      const value = one(name)?.trim();
      return value === undefined || value === "" ? value : right(name, read, value);
    },
    all: (name, read) => taken(name).flatMap((value) => right(name, read, value) ?? []),
    wrong,
    done: () => {
      const [strange] = values.keys();
      if (strange !== undefined) wrongField(strange, "is not known");
      return problems;
    },
  };
}

export function matching(pattern: RegExp): Read<string> {
  return (value) => (pattern.test(value) ? value : undefined);
}

export function among<const T extends string>(words: readonly T[]): Read<T> {
  return (value) => words.find((word) => word === value);
}

/** A line of so many characters at the most. */
export function text(most: number): Read<string> {
  return (value) => {
    const line = value.trim();
    const isFit = hiddenIn(line) === undefined && !/[\t\n\r]/.test(line);
    return line === "" || line.length > most || !isFit ? undefined : line;
  };
}
