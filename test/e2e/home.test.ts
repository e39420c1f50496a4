/** The examples for a home server start the program as it is. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cli } from "../support/run-cli.js";

function example(name: string): string {
  return readFileSync(new URL(`../../examples/home/${name}`, import.meta.url), "utf8");
}

/** The options of `serve`, and what they are given, but for the places of files. */
function served(words: readonly string[]): string[] {
  expect(words[words.indexOf("serve") - 1]).toMatch(/(^|\/)feedround$/);
  return words.slice(words.indexOf("serve") + 1).filter((word) => !word.startsWith("/"));
}

test("service and container serve alike, by options that are there", async () => {
  const inService = /^ExecStart=(.*)$/m.exec(example("feedround.service"))?.[1]?.split(" ") ?? [];
  const entry = /^ENTRYPOINT (\[.*\])$/m.exec(example("Containerfile"))?.[1] ?? "[]";
  const options = served(inService);
  expect(served(JSON.parse(entry) as string[])).toEqual(options);
  const { stdout } = await cli(["serve", "--help"]);
  const names = options.filter((word) => word.startsWith("--"));
  expect(names.length).toBeGreaterThan(2);
  for (const name of names) expect(stdout).toContain(`${name} <`);
});

test("the container's health is asked for where it listens", () => {
  const text = example("Containerfile");
  const [port] = /(?<=^EXPOSE )\d+/m.exec(text) ?? [];
  expect(port).toBeDefined();
  expect(text).toContain(`http://127.0.0.1:${port ?? ""}/`);
  expect(text).toContain(`"--port", "${port ?? ""}"`);
  expect(text).toMatch(/^USER (?!root)/m);
});
