// @ts-nocheck
import { spawn, type ChildProcess } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import ICAL from "ical.js";
import { afterEach, describe, expect, test } from "vitest";
import { feedingDaysIn } from "../support/calendars.js";
import { cli, examplePath, scratchFolder } from "../support/run-cli.js";

const bin = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const running: ChildProcess[] = [];

afterEach(() => {
  for (const child of running.splice(0)) child.kill("SIGKILL");
});

/** Starts `feedround serve` on a free port of this machine; resolves once it says where it is. */
async function serve(...argv: string[]): Promise<{ child: ChildProcess; calendar: string }> {
  const state = scratchFolder();
  const child = spawn(process.execPath, [bin, "serve", ...argv, "--state", state]);
  running.push(child);
  let said = "";
  return new Promise((resolve, reject) => {
    child.stdout.on("data", (chunk: Buffer) => {
      said += chunk.toString();
      const calendar = /http:\/\/\S+\.ics/.exec(said)?.[0];
      if (calendar !== undefined) resolve({ child, calendar });
    });
    child.on("exit", (code) => {
      reject(new Error(`ended with ${code}: ${said}`));
    });
  });
}

describe("serve", () => {
  test("serves the calendar and the page, takes an edit up, and stops cleanly", async () => {
    const file = join(scratchFolder(), "plot.yaml");
    copyFileSync(examplePath("back-garden"), file);
    const { child, calendar } = await serve(file);
    const first = await (await fetch(calendar)).text();
    expect(
      new ICAL.Component(ICAL.parse(first) as unknown[]).getAllSubcomponents("vevent").length,
    ).toBeGreaterThan(5);
    expect(await (await fetch(calendar.replace(/\.ics$/, ""))).text()).toContain("Weir Cottage");

    const live = new Promise<void>((resolve) => {
      child.stderr?.on("data", (chunk: Buffer) => {
        if (chunk.toString().includes("the new calendar is live")) resolve();
      });
    });
    writeFileSync(
      file,
      readFileSync(file, "utf8").replace("garden: Weir Cottage", "garden: Weir End"),
    );
    await live;
    expect(await (await fetch(calendar)).text()).toContain("Weir End");

    const ended = new Promise((resolve) => child.on("exit", resolve));
    child.kill("SIGTERM");
    expect(await ended).toBe(0);
  });

  test("serves from the day of --today", async () => {
    const { calendar } = await serve(examplePath("back-garden"), "--today", "2027-07-07");
    expect(feedingDaysIn(await (await fetch(calendar)).text())[0]).toBe("2027-07-07");
    expect(await (await fetch(calendar.replace(/\.ics$/, ""))).text()).toContain(
      'data-today="2027-07-07"',
    );
  });

  test("a port that is no port is wrong usage, a missing file ends with exit code 3", async () => {
    expect((await cli(["serve", examplePath("back-garden"), "--port", "99999"])).code).toBe(2);
    expect((await cli(["serve", "no-such.yaml", "--state", scratchFolder()])).code).toBe(3);
  });
});

describe("publish", () => {
  test("into what is a file asks for a folder", async () => {
    const file = examplePath("back-garden");
    const { code, stderr } = await cli(["publish", file, file]);
    expect(code).toBe(3);
    expect(stderr).toContain("is a file, where a folder is needed: give the name of a folder");
  });

  test("writes calendar and page, and leaves unchanged files as they are", async () => {
    const folder = join(scratchFolder(), "public");
    expect(await cli(["publish", folder, examplePath("back-garden")])).toMatchObject({ code: 0 });
    const files = readdirSync(folder).filter((name) => /\.(ics|html)$/.test(name));
    expect(files.sort()).toEqual(["back-garden.html", "back-garden.ics"]);
    const before = statSync(join(folder, "back-garden.ics")).mtimeMs;
    const again = await cli(["publish", folder, examplePath("back-garden")]);
    expect(again.stderr).toContain("0 written");
    expect(statSync(join(folder, "back-garden.ics")).mtimeMs).toBe(before);
  });

  test("after an edit of one planting, the rounds of the others stay where they were published", async () => {
    const folder = join(scratchFolder(), "public");
    const garden = readFileSync(examplePath("back-garden"), "utf8").replace(
      "days: [wed, sat]",
      "days: [mon, tue, wed, thu, fri, sat, sun]",
    );
    const file = join(scratchFolder(), "plot.yaml");
    const days = async (text: string): Promise<string[]> => {
      writeFileSync(file, text);
      expect(await cli(["publish", folder, file])).toMatchObject({ code: 0 });
      return feedingDaysIn(readFileSync(join(folder, "plot.ics"), "utf8"));
    };
    const before = await days(garden);
    const edited = garden.replace("transplanted: 2027-05-20", "transplanted: 2027-05-13");
    expect(edited).not.toBe(garden);
    expect(await days(edited)).toEqual(before);
    const afresh = await cli(["plan", file, "--json"]);
    const { rounds } = JSON.parse(afresh.stdout) as { rounds: { day: string }[] };
    expect(rounds.map(({ day }) => day)).not.toEqual(before);
  });

  test("over the calendar of another garden, or a damaged one, is refused, and it stays", async () => {
    const folder = join(scratchFolder(), "public");
    const file = join(scratchFolder(), "plot.yaml");
    const out = join(folder, "plot.ics");
    copyFileSync(examplePath("orchard-corner"), file);
    copyFileSync(examplePath("orchard-rules"), join(dirname(file), "orchard-rules.yaml"));
    expect(await cli(["publish", folder, file])).toMatchObject({ code: 0 });
    const whole = readFileSync(out, "utf8");
    copyFileSync(examplePath("back-garden"), file);
    const other = await cli(["publish", folder, file]);
    expect(other.code).toBe(1);
    expect(other.stderr).toContain(`${out}:1:1: this calendar belongs to the garden`);
    expect(readFileSync(out, "utf8")).toBe(whole);
    copyFileSync(examplePath("orchard-corner"), file);
    const half = whole.slice(0, whole.length / 2);
    writeFileSync(out, half);
    const damaged = await cli(["publish", folder, file]);
    expect(damaged.code).toBe(1);
    expect(damaged.stderr).toContain("damaged");
    expect(readFileSync(out, "utf8")).toBe(half);
  });

  test("--today is the day of plan, page and stamp; the garden's own calendar is left as it is", async () => {
    const folder = join(scratchFolder(), "public");
    const file = join(scratchFolder(), "plot.yaml");
    const garden = readFileSync(examplePath("back-garden"), "utf8");
    writeFileSync(file, garden.replace("calendar:\n", "calendar:\n  file: own.ics\n"));
    const published = await cli(["publish", folder, file, "--today", "2027-07-07"]);
    expect(published.code).toBe(0);
    expect(readFileSync(join(folder, "plot.html"), "utf8")).toContain('data-today="2027-07-07"');
    const calendar = readFileSync(join(folder, "plot.ics"), "utf8");
    expect(feedingDaysIn(calendar)[0]).toBe("2027-07-07");
    expect(calendar).toContain("DTSTAMP:20270707T120000Z");
    expect(existsSync(join(dirname(file), "own.ics"))).toBe(false);
    await cli(["publish", folder, file, "--today", "2027-07-07"], { today: "2027-07-07" });
    expect(existsSync(join(dirname(file), "own.ics"))).toBe(true);
  });

  test("an index is written only when it is asked for", async () => {
    const folder = join(scratchFolder(), "public");
    await cli(["publish", folder, examplePath("back-garden"), "--index"]);
    expect(readdirSync(folder)).toContain("index.html");
  });

  test("counts the gardens of a folder on a terminal, and only there", async () => {
    const gardens = scratchFolder();
    for (const name of ["a", "b"])
      copyFileSync(examplePath("back-garden"), join(gardens, `${name}.yaml`));
    const publish = async (progress: boolean): Promise<string> =>
      (await cli(["publish", join(scratchFolder(), "public"), gardens], { progress })).stderr;
    expect(await publish(true)).toMatch(/\r1 of 2 gardens\r2 of 2 gardens\r\u001b\[K/);
    expect(await publish(false)).not.toMatch(/of 2 gardens|\r/);
  });

  test("a garden with problems ends with exit code 1, a wrong address is wrong usage", async () => {
    const broken = join(scratchFolder(), "broken.yaml");
    writeFileSync(broken, "version: 1\n");
    const { code, stderr } = await cli(["publish", join(scratchFolder(), "p"), broken]);
    expect(code).toBe(1);
    expect(stderr).toContain("`garden` is missing");
    const folder = scratchFolder();
    expect((await cli(["publish", folder, examplePath("back-garden"), "--url", "x"])).code).toBe(2);
  });
});
