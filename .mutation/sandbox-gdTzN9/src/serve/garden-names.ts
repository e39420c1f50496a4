// @ts-nocheck
import { createHash } from "node:crypto";
import { basename } from "node:path";

/** A garden file and the word it goes by in addresses and published file names. */
export interface NamedFile {
  readonly file: string;
  /** `[a-z0-9-]+`, unique. */
  readonly name: string;
}

const longestName = 60;
/** The published index page has this name. */
const reserved = "index";

/**
 * Names for garden files, from their file names. A file's name depends on others only when they would
 * get the same one: then none of them gets it, so that no address ever turns to another garden.
 */
export function gardenNames(files: readonly string[]): NamedFile[] {
  const forms: ((file: string) => string)[] = [
    plainName,
    (file) => marked(file, basename(file)),
    (file) => marked(file, file),
  ];
  return forms.reduce<NamedFile[]>(
    (named, form) => {
      const isUnclear = unclear(named);
      return named.map(({ file, name }) => ({ file, name: isUnclear(name) ? form(file) : name }));
    },
    files.map((file) => ({ file, name: "" })),
  );
}

/** Which names can't stay: none, the reserved one, and those of more than one file. */
function unclear(named: readonly NamedFile[]): (name: string) => boolean {
  const count = new Map<string, number>();
  for (const { name } of named) count.set(name, (count.get(name) ?? 0) + 1);
  return (name) => name === "" || name === reserved || count.get(name) !== 1;
}

function plainName(file: string): string {
  return basename(file)
    .replace(/\.ya?ml$/i, "")
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+/, "")
    .slice(0, longestName)
    .replace(/-+$/, "");
}

/** With 48 bits of a text: unlike for unlike texts. */
function marked(file: string, text: string): string {
  const mark = createHash("sha256").update(text).digest("hex").slice(0, 12);
  const name = plainName(file);
  return `${name === "" ? "garden" : name}-${mark}`;
}
