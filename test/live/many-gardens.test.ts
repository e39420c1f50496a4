/** Folders of many gardens, through the real commands: in threads, killed half-way, and in parts. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, describe, expect, test } from "vitest";
import { gardenText } from "../support/a-garden.js";
import { cli, scratchFolder } from "../support/run-cli.js";
import { workerEntry } from "../support/worker-entry.js";
import { growing } from "./a-live-garden.js";

const today = "2027-07-01";
const bin = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
let entry: URL;

beforeAll(async () => {
  entry = await workerEntry();
});

/** 24 gardens, one of them broken, one with a calendar of its own, and rules of one's own beside. */
function manyGardens(): string {
  const folder = join(scratchFolder(), "gardens");
  mkdirSync(folder);
  for (let i = 0; i < 24; i++) {
    const own = i === 5 ? "calendar: { file: own.ics }\n" : "";
    const text = gardenText(growing({}, { id: "more" })).replace(/^id: .*$/m, `id: plot-${i}`);
    const broken = i === 7 ? text.replace("crop: tomato", "crop: tomatoe") : text;
    writeFileSync(join(folder, `plot-${i}.yaml`), own + broken);
  }
  return folder;
}

function textsIn(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  const files = names.filter((name) => statSync(join(folder, name)).isFile());
  return Object.fromEntries(files.map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

async function publishedAtOnce(
  gardens: string,
  threads?: { entry: URL; most: number },
): Promise<{ told: string; texts: Readonly<Record<string, string>> }> {
  const folder = join(scratchFolder(), "public");
  const world = { today, ...(threads && { threads }) };
  const { code, stderr } = await cli(["publish", folder, gardens, "--index"], world);
  expect(code).toBe(1);
  return { told: stderr.replaceAll(folder, "public"), texts: textsIn(folder) };
}

let whole: Readonly<Record<string, string>> | undefined;

async function undisturbed(): Promise<Readonly<Record<string, string>>> {
  if (whole === undefined) {
    const folder = join(scratchFolder(), "public");
    await cli(["publish", folder, manyGardens(), "--index", "--today", today], { today });
    whole = textsIn(folder);
  }
  return whole;
}

describe("publish of many gardens", () => {
  test("in threads says and writes what it does without", async () => {
    const one = await publishedAtOnce(manyGardens());
    expect(one.told).toContain("the crop `tomatoe` is not known");
    const gardens = manyGardens();
    const many = await publishedAtOnce(gardens, { entry, most: 3 });
    expect(many.texts).toEqual(one.texts);
    const where = /\S*gardens/g;
    expect(many.told.replace(where, "gardens")).toBe(one.told.replace(where, "gardens"));
    expect(readFileSync(join(gardens, "own.ics"), "utf8")).toBe(many.texts["plot-5.ics"]);
  });

  test("starts no thread for a few", async () => {
    const gardens = manyGardens();
    const nowhere = { entry: new URL("file:///nowhere/thread.js"), most: 3 };
    const files = [0, 1, 2].map((i) => join(gardens, `plot-${i}.yaml`));
    const world = { today, threads: nowhere };
    expect(await cli(["publish", join(scratchFolder(), "p"), ...files], world)).toMatchObject({
      code: 0,
    });
  });

  test("tells which garden it failed at, and publishes the others", async () => {
    const script = join(scratchFolder(), "thread.mjs");
    writeFileSync(
      script,
      `await import(${JSON.stringify(entry.href)});
       const { parentPort } = await import("node:worker_threads");
       parentPort.on("message", ({ ask }) => { if (ask.name === "plot-3") process.exit(1); });`,
    );
    const gardens = manyGardens();
    const { told, texts } = await publishedAtOnce(gardens, {
      entry: new URL(`file://${script}`),
      most: 2,
    });
    expect(told).toMatch(
      /plot-3\.yaml:1:1: the program failed at this garden \(.*\): this is a fault/,
    );
    const all = (await publishedAtOnce(manyGardens())).texts;
    const others = Object.keys(all).filter((name) => /^plot-(?!3\.).*\./.test(name));
    expect(others).toHaveLength(44);
    for (const name of others) expect(texts[name]).toBe(all[name]);
    expect(Object.keys(texts)).not.toContain("plot-3.ics");
  });

  test.each([1, 2, 9, 20, 40])(
    "killed when %i files are there and run again, writes what one run does",
    async (files) => {
      const gardens = manyGardens();
      const folder = join(scratchFolder(), "public");
      mkdirSync(folder);
      const argv = ["publish", folder, gardens, "--index", "--today", today];
      const child = spawn(process.execPath, [bin, ...argv], { stdio: "ignore" });
      const ended = once(child, "exit");
      const isOver = (): boolean => child.exitCode !== null;
      while (!isOver() && readdirSync(folder).filter((name) => /^[^.]/.test(name)).length < files)
        await new Promise((resolve) => setImmediate(resolve));
      child.kill("SIGKILL");
      await ended;
      expect((await cli(argv, { today })).code).toBe(1);
      expect(textsIn(folder)).toEqual(await undisturbed());
    },
  );

  test("in parts, then joined, writes what one run does", async () => {
    const gardens = manyGardens();
    const folder = join(scratchFolder(), "public");
    for (let part = 1; part <= 3; part++)
      await cli(["publish", folder, gardens, "--part", `${part}/3`], { today });
    const { code, stderr } = await cli(["publish", folder, "--join", "--index"], { today });
    expect({ code, stderr }).toEqual({
      code: 0,
      stderr: `${folder}: 1 written, 0 unchanged, 0 removed\n`,
    });
    expect(textsIn(folder)).toEqual((await publishedAtOnce(manyGardens())).texts);
  });

  test.each([
    [["--part", "0/4"], "Write which part, of how many: 1/4, 2/4, 3/4 and 4/4."],
    [["--part", "5/4"], "Write which part"],
    [["--part", "x"], "Write which part"],
    [["--part", "1/0"], "Write which part"],
    [["--part", "1.5/4"], "Write which part"],
    [
      ["--part", "1/4", "--index"],
      "--index and --writing are of the whole folder: give them with --join",
    ],
    [["--part", "1/4", "--join"], "--join comes after the parts: give it without --part"],
    [["--join"], "--join takes the lists of the parts alone: give no gardens with it"],
  ])("refuses %j, and says what to write", async (options, said) => {
    const folder = join(scratchFolder(), "public");
    const { code, stderr } = await cli(["publish", folder, "garden.yaml", ...options], { today });
    expect(code).toBe(2);
    expect(stderr).toContain(said);
  });

  test("without gardens asks for them, and joining without parts for these", async () => {
    const folder = join(scratchFolder(), "public");
    expect(await cli(["publish", folder])).toMatchObject({
      code: 2,
      stderr: "name the gardens to publish\n",
    });
    const { code, stderr } = await cli(["publish", folder, "--join"]);
    expect(code).toBe(3);
    expect(stderr).toContain("holds no parts: publish each with --part first");
  });
});
