// @ts-nocheck
import { readdirSync, readFileSync } from "node:fs";
import { format } from "prettier";
import { expect, test } from "vitest";
import { habits, stageNames } from "../../src/crops/crop.js";
import {
  acids,
  covers,
  eggSizes,
  feedWishes,
  routes,
  warmthWishes,
} from "../../src/garden/garden.js";
import { amendmentKinds, extracts, grades, mulches, soilKinds } from "../../src/garden/soil.js";
import { readSchema } from "./data-files.js";

/** What is said in many schemas and stands once, in the code. */
const terms: Readonly<Record<string, readonly unknown[]>> = {
  stages: stageNames,
  habits,
  routes,
  acids,
  "egg sizes": eggSizes,
  "end of feeding": ["harvest"],
  "kinds of cover": covers,
  "wishes for warmth": warmthWishes,
  "wishes for feeding": feedWishes,
  "kinds of soil": soilKinds,
  "kinds of mulch": mulches,
  "extracts of soil": extracts,
  "amendments of soil": amendmentKinds,
  "grades of fineness": grades,
  "feed wishes": [true, false, ...routes, "both"],
};

const marked = /("\$comment": "the ([\w ]+), from the code",\s*"enum": )\[[^\]]*\]/g;

/** Those of the plan and the batch report are made from the types. */
const schemas = readdirSync(new URL("../../schemas", import.meta.url))
  .map((file) => file.replace(".schema.json", ""))
  .filter((name) => name !== "plan" && name !== "batch");

/** After a change of the code's lists: `npm run unit -- terms -u`. */
test.each(schemas)("schemas/%s has the code's own stages, routes and acids", async (name) => {
  const file = `../../schemas/${name}.schema.json`;
  const text = readFileSync(new URL(file, import.meta.url), "utf8");
  const renewed = text.replace(
    marked,
    (_, head: string, term: string) => head + JSON.stringify(terms[term]),
  );
  await expect(await format(renewed, { parser: "json", printWidth: 100 })).toMatchFileSnapshot(
    file,
  );
});

const words = new Set<unknown>([...stageNames, ...routes, ...acids, ...habits, ...covers]);

function listsOf(node: unknown): { $comment?: string; enum: unknown[] }[] {
  if (typeof node !== "object" || node === null) return [];
  const own = "enum" in node && Array.isArray(node.enum) ? [{ ...node, enum: node.enum }] : [];
  return [...own, ...Object.values(node).flatMap(listsOf)];
}

test.each(schemas)("schemas/%s has no such list of its own", (name) => {
  const lists = listsOf(readSchema(name)).filter((list) => list.enum.some((w) => words.has(w)));
  for (const { $comment } of lists) expect($comment).toMatch(/^the .*, from the code$/);
});
