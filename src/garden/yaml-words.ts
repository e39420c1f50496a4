/** What keeps a text from being YAML, told to growers. */
import type { YAMLError } from "yaml";

type Words = readonly [message: string, mend: string];
export const tooDeep: Words = [
  "the file nests too deeply to be read",
  "check brackets and indentation",
];

export function inOurWords(error: YAMLError): Words {
  if (/call stack/i.test(error.message)) return tooDeep;
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

function lowerFirst(message: string): string {
  const line = message.split("\n")[0] ?? "";
  return line.charAt(0).toLowerCase() + line.slice(1).replace(/\.$/, "");
}
