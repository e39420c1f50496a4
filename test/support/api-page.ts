/** What the library's face exports, with its docstrings as they stand in the sources, and the page of it. */
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { byText } from "../../src/values.js";

const root = fileURLToPath(new URL("../..", import.meta.url));

export interface Export {
  readonly name: string;
  readonly kind: "function" | "value" | "type";
  /** Its docstring, tags too; empty where it has none. */
  readonly docs: string;
  /** Its declaration without what it does; empty where it was made from a schema, which says more. */
  readonly text: string;
  readonly node: ts.Node;
}

export interface Face {
  readonly about: string;
  /** By name. */
  readonly exports: readonly Export[];
}

/** The exports of `src/index.ts`, and its own docstring. */
export function face(): Face {
  const read = ts.readConfigFile(`${root}/tsconfig.json`, (path) => ts.sys.readFile(path));
  const config: unknown = read.config;
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, root);
  const program = ts.createProgram([`${root}/src/index.ts`], options);
  const checker = program.getTypeChecker();
  const file = program.getSourceFile(`${root}/src/index.ts`);
  const [first] = file?.statements ?? [];
  const module = file && checker.getSymbolAtLocation(file);
  if (first === undefined || module === undefined) throw new Error("src/index.ts is no module");
  const exports = checker.getExportsOfModule(module).map((symbol): Export => {
    const isAlias = (symbol.flags & ts.SymbolFlags.Alias) !== 0;
    const [node] = (isAlias ? checker.getAliasedSymbol(symbol) : symbol).declarations ?? [];
    if (node === undefined) throw new Error(`${symbol.name} is declared nowhere`);
    return { name: symbol.name, node, docs: docsOf(node), ...shapeOf(node, checker) };
  });
  return { about: docsOf(first), exports: exports.sort((a, b) => byText(a.name, b.name)) };
}

/** Text of a docstring, tags too; empty where there is none. */
export function docsOf(node: ts.Node): string {
  const documented = ts.isVariableDeclaration(node) ? node.parent.parent : node;
  const doc = ts.getJSDocCommentsAndTags(documented).findLast(ts.isJSDoc);
  return (doc?.getText() ?? "")
    .replace(/^\/\*\*\s?|\s*\*\/$/g, "")
    .replace(/^[ \t]*\* ?/gm, "")
    .replace(/\{@link (\w+) ?\}/g, "`$1`")
    .trim();
}

function shapeOf(node: ts.Node, checker: ts.TypeChecker): Pick<Export, "kind" | "text"> {
  if (ts.isFunctionDeclaration(node)) {
    const end = node.body?.getStart() ?? node.end;
    const text = node.getSourceFile().text.slice(node.getStart(), end).trim();
    return { kind: "function", text: withoutExport(text) };
  }
  if (ts.isVariableDeclaration(node)) {
    const type = checker.typeToString(checker.getTypeAtLocation(node));
    return { kind: "value", text: `const ${node.name.getText()}: ${type}` };
  }
  const isMade = node.getSourceFile().fileName.includes("/src/compiled/");
  return { kind: "type", text: isMade ? "" : withoutExport(node.getText()) };
}

function withoutExport(text: string): string {
  return text.replace(/^export /, "");
}

/** The page as Markdown. */
export function apiPage({ about, exports }: Face): string {
  const [prose = "", example = ""] = about.split("@example\n");
  const part = (title: string, ...kinds: readonly Export["kind"][]) => [
    `## ${title}`,
    ...exports.filter(({ kind }) => kinds.includes(kind)).map(entry),
  ];
  return [
    "# The library",
    prose.trim(),
    code("js", example.trim()),
    "Units are in the names: `Ml`, `L`, `MgPerL` (mg in a litre), `GPerL`, `Days`, `Min`, `C` (degrees Celsius), `Mm`, `M2`. A `Day` is `YYYY-MM-DD`. Expected trouble is a value, `Result`; what throws is a mistake of the caller, or ours. Types that stand here without an entry of their own are in the package's type files.",
    ...part("Functions and values", "function", "value"),
    ...part("Types", "type"),
    "",
  ].join("\n\n");
}

function entry({ name, docs, text }: Export): string {
  const prose = docs
    .replace(/^@param (\w+) /gm, "- `$1`: ")
    .replace(/^@returns /gm, "- Returns ")
    .replace(/^@throws /gm, "- Throws ");
  return [`### ${name}`, prose, ...(text === "" ? [] : [code("ts", text)])].join("\n\n");
}

function code(language: string, text: string): string {
  return `\`\`\`${language}\n${text}\n\`\`\``;
}
