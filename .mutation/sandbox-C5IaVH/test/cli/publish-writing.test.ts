// @ts-nocheck
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
//  It is plain JavaScript.
import { buildWeb } from "../../scripts/build-web.js";
import { webFolder } from "../../src/cli/writing-page.js";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";

beforeAll(async () => {
  if (!existsSync(join(webFolder, "index.html"))) await (buildWeb as () => Promise<unknown>)();
});

test("publish --writing puts the writing page into a folder of its own", async () => {
  const folder = scratchFolder();
  const publish = () => cli(["publish", folder, examplePath("back-garden"), "--writing"]);
  const first = await publish();
  expect(first.code).toBe(0);
  const files = readdirSync(join(folder, "writing"));
  expect(files).toContain("index.html");
  expect(files).toContain("feedround.html");
  // It is the server's.
  expect(files).not.toContain("file.html");
  for (const name of files.filter((one) => one !== "feedround-files.json"))
    expect(
      readFileSync(join(folder, "writing", name)).equals(readFileSync(join(webFolder, name))),
    ).toBe(true);
  expect((await publish()).stderr).toContain(" 0 written,");
});

test("a file of the grower's own in that folder is not written over", async () => {
  const folder = scratchFolder();
  await cli(["publish", folder, examplePath("back-garden"), "--writing"]);
  const page = join(folder, "writing", "index.html");
  writeFileSync(join(folder, "writing", "feedround-files.json"), `{"version":1,"files":{}}`);
  writeFileSync(page, "mine");
  const { code, stderr } = await cli(["publish", folder, examplePath("back-garden"), "--writing"]);
  expect({ code, kept: readFileSync(page, "utf8") }).toEqual({ code: 3, kept: "mine" });
  expect(stderr).toContain("index.html is there already");
});
