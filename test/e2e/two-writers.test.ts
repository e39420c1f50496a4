import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

test("of two processes that write into one garden, what each told written is in the file", () => {
  const script = fileURLToPath(new URL("../../scripts/writers.js", import.meta.url));
  const told = execFileSync(process.execPath, [script, "10"], { encoding: "utf8" });
  expect(JSON.parse(told)).toMatchObject({ pairs: 10, toldWritten: 20, inFile: 20, refused: 0 });
});
