// @ts-nocheck
import { format } from "prettier";
import { createGenerator } from "ts-json-schema-generator";
import { expect, test } from "vitest";

/** After a change of the plan's types: `npm run unit -- plan-schema -u`. */
test("the schema of the plan is the one that its types give", async () => {
  const root = new URL("../../", import.meta.url).pathname;
  const schema = createGenerator({
    path: `${root}src/season/season-plan.ts`,
    type: "Plan",
    tsconfig: `${root}tsconfig.json`,
    skipTypeCheck: true,
    expose: "none",
    topRef: false,
  }).createSchema("Plan");
  const titled = {
    $schema: schema.$schema,
    $id: "https://feedround.invalid/schemas/plan.schema.json",
    title: "The plan of a season, as `feedround plan --json` prints it",
    ...schema,
  };
  await expect(
    await format(JSON.stringify(titled), { parser: "json", printWidth: 100 }),
  ).toMatchFileSnapshot("../../schemas/plan.schema.json");
});
