// @ts-nocheck
import { format } from "prettier";
import { createGenerator } from "ts-json-schema-generator";
import { expect, test } from "vitest";

/** After a change of the report's types: `npm run unit -- batch-schema -u`. */
test("the schema of the batch report is the one that its types give", async () => {
  const root = new URL("../../", import.meta.url).pathname;
  const schema = createGenerator({
    path: `${root}src/notes/batch-report.ts`,
    type: "BatchReport",
    tsconfig: `${root}tsconfig.json`,
    skipTypeCheck: true,
    expose: "none",
    topRef: false,
  }).createSchema("BatchReport");
  const titled = {
    $schema: schema.$schema,
    $id: "https://feedround.invalid/schemas/batch.schema.json",
    title: "A recipe and the batches to make, as `feedround batch --json` prints them",
    ...schema,
  };
  await expect(
    await format(JSON.stringify(titled), { parser: "json", printWidth: 100 }),
  ).toMatchFileSnapshot("../../schemas/batch.schema.json");
});
