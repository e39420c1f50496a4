import { closeSync, openSync } from "node:fs";
import { truncate, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { fileBytes } from "../../src/cli/serve-command.js";
import { batchedLines } from "../../src/serve/request-log.js";
import { aFolder } from "./a-server.js";

test("lines at one moment are written at once and in order, and the last ones at the end", () => {
  const written: string[] = [];
  const moments: (() => void)[] = [];
  const { log, flush } = batchedLines((text) => written.push(text), {
    later: (then) => moments.push(then),
  });
  log("a");
  log("b");
  expect(written).toEqual([]);
  for (const then of moments) then();
  expect(written).toEqual(["a\nb\n"]);
  log("c");
  flush();
  flush();
  expect(written).toEqual(["a\nb\n", "c\n"]);
});

test("a file that is full gets no more lines of requests, those of gardens still, and goes on once emptied", async () => {
  const file = join(await aFolder(onTestFinished), "log");
  await writeFile(file, "");
  const fd = openSync(file, "a");
  onTestFinished(() => {
    closeSync(fd);
  });
  const written: string[] = [];
  const { log, logRequest, flush } = batchedLines((text) => written.push(text), {
    later: () => undefined,
    sizeBytes: () => fileBytes(fd),
  });
  const batch = (): string => {
    logRequest("a request");
    log("a garden");
    logRequest("another request");
    flush();
    return written.splice(0).join("");
  };
  expect(batch()).toBe("a request\na garden\nanother request\n");
  await truncate(file, 10_000_000);
  const full = "this file has 10 MB: requests are told of again once it is smaller\n";
  expect(batch()).toBe(`${full}a garden\n`);
  expect(batch()).toBe("a garden\n");
  await truncate(file, 0);
  expect(batch()).toBe("a request\na garden\nanother request\n");
});

test("what is no file has no size", () => {
  const device = openSync("/dev/null", "w");
  expect(fileBytes(device)).toBe(0);
  closeSync(device);
  expect(fileBytes(device)).toBe(0);
});
