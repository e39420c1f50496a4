/** The library's face: every export is explained, and `docs/api.md` says what stands in the sources. */
import ts from "typescript";
import { expect, test } from "vitest";
import { apiPage, docsOf, face } from "./support/api-page.js";

const library = face();

test("the page of the library is what its sources say", async () => {
  await expect(apiPage(library)).toMatchFileSnapshot("../docs/api.md");
});

test("every export is explained", () => {
  expect(library.exports.length).toBeGreaterThan(80);
  expect(library.exports.filter(({ docs }) => docs === "").map(({ name }) => name)).toEqual([]);
});

test("what gives a result says what its problems are", () => {
  const giving = library.exports.filter(({ kind, text }) => {
    return kind === "function" && /\): (?:Mix)?Result</.test(text);
  });
  expect(giving.length).toBeGreaterThan(8);
  const silent = giving.filter(({ docs }) => !/problem|trouble|finding/i.test(docs));
  expect(silent.map(({ name }) => name)).toEqual([]);
});

/** Units at the end of a name; counts and pH need none. */
const unit =
  /(?:Ml|L|PerL|Kg|KgWater|G|Mg|Days|Day|Min|Hours|C|Mm|M|M2|Km|Deg|Purity|Percent|Share|[pP]h)$|^(?:ml|grams)$/;
const count =
  /^(?:rounds|feedings|bottles?|count|number|columns|rows|times|sequence|plants|eggs)$/i;

test("a number says its unit in its name, or beside it", () => {
  const bare = library.exports.flatMap(({ name, node }) =>
    numbersIn(node)
      .filter(({ key, docs }) => docs === "" && !unit.test(key) && !count.test(key))
      .map(({ key }) => `${name}.${key}`),
  );
  expect(bare).toEqual([]);
});

function numbersIn(node: ts.Node): { key: string; docs: string }[] {
  if (ts.isPropertySignature(node) && node.type?.kind === ts.SyntaxKind.NumberKeyword)
    return [{ key: node.name.getText(), docs: docsOf(node) }];
  const found: { key: string; docs: string }[] = [];
  if (!ts.isFunctionDeclaration(node))
    ts.forEachChild(node, (child) => void found.push(...numbersIn(child)));
  return found;
}
