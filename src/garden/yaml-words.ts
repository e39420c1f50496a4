/** What keeps a text from being YAML, told to growers. */
import { type Document, visit, type YAMLError } from "yaml";

type Words = readonly [message: string, mend: string];
export const tooDeep: Words = [
  "the file nests too deeply to be read",
  "check brackets and indentation",
];

export function inOurWords(error: YAMLError): Words {
  if (/call stack/i.test(error.message)) return tooDeep;
  if (isOpenQuote(error))
    return ["a quote that opens here is not closed", "close it, or take it out"];
  switch (error.code) {
    case "TAB_AS_INDENT":
      return ["a tab is used to indent", "indent with spaces"];
    case "BAD_INDENT": {
      const [, bracket] = /end with a ([\]}])/.exec(error.message) ?? [];
      if (bracket !== undefined)
        return [
          `a bracket opened before this is not closed with ${bracket}`,
          `write the ${bracket}, or set its further lines in`,
        ];
      return ["this line is indented differently from its neighbours", "line it up with them"];
    }
    case "BLOCK_AS_IMPLICIT_KEY":
      return [
        "a key stands where none can be",
        "check the indentation of this line; put the text in quotes if the colon is part of it",
      ];
    case "MULTILINE_IMPLICIT_KEY":
    case "MISSING_CHAR":
      return [
        `something is missing here (${lowerFirst(error.message)})`,
        "check colons, commas, quotes and brackets on this line and the one before",
      ];
    case "TAG_RESOLVE_FAILED":
      return ["a YAML tag (!name) means nothing here", "remove the tag"];
    case "NON_STRING_KEY":
      return ["a key is not text", "write the key as a word, in quotes if need be"];
    default:
      return [
        `this is not YAML that can be read (${lowerFirst(error.message)})`,
        "check indentation, colons, quotes and brackets around this place",
      ];
  }
}

/** Each of these stands for itself; any other slip breaks what follows it. */
const ofOnePlace: ReadonlySet<string> = new Set(["TAG_RESOLVE_FAILED", "NON_STRING_KEY"]);

/** The errors that are slips of the writer: tabs, else the first that breaks the text, else all. */
export function toldOf(errors: readonly YAMLError[]): readonly YAMLError[] {
  const tabs = errors.filter(({ code }) => code === "TAB_AS_INDENT");
  if (tabs.length > 0) return tabs;
  const breaking = errors.filter(({ code }) => !ofOnePlace.has(code));
  if (breaking.length === 0) return errors;
  return [breaking.reduce((first, one) => (one.pos[0] < first.pos[0] ? one : first))];
}

/** It is met at the end of the file. */
export function isOpenQuote({ code, message }: YAMLError): boolean {
  return code === "MISSING_CHAR" && /closing .quote/.test(message);
}

/** Where the text in quotes begins that runs on to the end. */
export function openQuote(documents: readonly Document.Parsed[]): number | undefined {
  let last: number | undefined;
  for (const doc of documents)
    visit(doc, {
      Scalar(_, { type, range }) {
        if (type === "QUOTE_DOUBLE" || type === "QUOTE_SINGLE") last = range?.[0];
      },
    });
  return last;
}

function lowerFirst(message: string): string {
  const line = message.split("\n")[0] ?? "";
  return line.charAt(0).toLowerCase() + line.slice(1).replace(/\.$/, "");
}
