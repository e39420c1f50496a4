// @ts-nocheck
import { hostname } from "node:os";
import { mkdir, readdir, rename, rm, utimes, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { describe, expect, onTestFinished, test, vi } from "vitest";
import { stepOf } from "../../src/serve/garden-folder.js";
import { type AsOf, gardenSource, type GardenSource } from "../../src/serve/garden-source.js";
import { isGardenFileName } from "../../src/serve/scan.js";
import { serveGardens } from "../../src/serve/serve.js";
import { given } from "../../src/values.js";
import { aPlan, roundsOn } from "../support/a-plan.js";
import { aFolder, aServer, gardenText, get, testSource, until } from "./a-server.js";

const onEnd = onTestFinished;
const first = gardenText("Weir", "2027-06-12", "2027-06-26");
const moved = gardenText("Weir", "2027-06-12", "2027-06-27");

// The 27th is in DTEND of the 26th, too.
const oldDay = "DTSTART;VALUE=DATE:20270626";
const newDay = "DTSTART;VALUE=DATE:20270627";

/** From now on the server waits until the test lets it look: not a moment of it is waited for. */
function stopTimers(): void {
  vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout", "Date"] });
  onEnd(() => {
    vi.useRealTimers();
  });
}

/** Lets the server look at the files, and waits until it has read what it then reads. */
async function look(): Promise<void> {
  await until(() => vi.getTimerCount() === 1);
  vi.advanceTimersToNextTimer();
  await until(() => vi.getTimerCount() === 1);
}

const textAt = async (port: number, path: string): Promise<string> =>
  (await get(port, path)).body.toString();
const sequences = (calendar: string): number[] =>
  [...calendar.matchAll(/^SEQUENCE:(\d+)/gm)].map(([, n]) => Number(n)).sort();

describe("an edit of a garden file", () => {
  test("goes live within a second, with the usual look at the files", async () => {
    stopTimers();
    const { port, folder } = await aServer(onEnd, { lookMs: 400 });
    await writeFile(join(folder, "weir.yaml"), moved);
    const beganMs = Date.now();
    await look();
    expect(await textAt(port, "/weir.ics")).not.toContain(newDay);
    await look();
    expect(await textAt(port, "/weir.ics")).toContain(newDay);
    expect(Date.now() - beganMs).toBeLessThan(1000);
    expect(await textAt(port, "/weir")).toContain("2027-06-27");
  });

  test("is seen when an editor saves by rename, or a sync program keeps the size and sets the time back", async () => {
    const { port, folder } = await aServer(onEnd);
    const file = join(folder, "weir.yaml");
    await writeFile(join(folder, ".weir.yaml.swp"), moved);
    await rename(join(folder, ".weir.yaml.swp"), file);
    await until(async () => (await textAt(port, "/weir.ics")).includes(newDay));
    await writeFile(file, first);
    await utimes(file, 1_000_000, 1_000_000);
    await until(async () => (await textAt(port, "/weir.ics")).includes(oldDay));
  });

  test("keeps UIDs and raises SEQUENCE of what changed, and a new tag and date go with it", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    const { port, folder } = await aServer(onEnd, { nowMs: () => nowMs });
    const before = await get(port, "/weir.ics");
    nowMs += 60_000;
    await writeFile(join(folder, "weir.yaml"), moved);
    await until(async () => {
      return (await get(port, "/weir.ics")).headers.etag !== before.headers.etag;
    });
    const after = await get(port, "/weir.ics");
    const uids = (text: string) => text.match(/^UID:.*$/gm)?.sort();
    expect(uids(after.body.toString())).toEqual(uids(before.body.toString()));
    expect(sequences(before.body.toString())).toEqual([0, 0]);
    expect(sequences(after.body.toString())).toEqual([0, 1]);
    expect(after.headers["last-modified"]).toBe("Sat, 01 May 2027 00:01:00 GMT");
    const since = { "if-modified-since": before.headers["last-modified"] ?? "" };
    expect((await get(port, "/weir.ics", since)).status).toBe(200);
  });

  test("that changes nothing in the calendar leaves its bytes, tag and date", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    const { port, folder, lines } = await aServer(onEnd, { nowMs: () => nowMs });
    const before = await get(port, "/weir.ics");
    nowMs += 60_000;
    await writeFile(join(folder, "weir.yaml"), "broken");
    await until(() => lines.some((line) => line.includes("broken")));
    await writeFile(join(folder, "weir.yaml"), `${first}\n\n`);
    await until(() => lines.some((line) => line.includes("in order again")));
    const after = await get(port, "/weir.ics");
    expect({ ...after.headers, date: "" }).toEqual({ ...before.headers, date: "" });
    expect(after.body).toEqual(before.body);
  });

  test("that breaks the file keeps the last good calendar, and shows the problem on page and terminal", async () => {
    const { port, folder, lines } = await aServer(onEnd);
    const before = await get(port, "/weir.ics");
    await writeFile(join(folder, "weir.yaml"), "broken");
    await until(async () => (await textAt(port, "/weir")).includes("problems broken"));
    expect((await get(port, "/weir.ics")).body).toEqual(before.body);
    expect(await textAt(port, "/weir")).toContain("rounds 2027-06-12 2027-06-26");
    expect(await textAt(port, "/")).toContain("has a problem");
    await until(() => lines.some((line) => line.endsWith("weir.yaml:1:1: broken: mend it")));
    expect(lines.some((line) => line === "weir: the last good calendar stays")).toBe(true);
    await writeFile(join(folder, "weir.yaml"), moved);
    await until(async () => !(await textAt(port, "/weir")).includes("broken"));
    expect(await textAt(port, "/weir.ics")).toContain(newDay);
  });

  test("that is being written slowly is not taken for a shorter garden", async () => {
    const days = Array.from({ length: 20 }, (_, i) => `2027-06-${String(i + 1).padStart(2, "0")}`);
    stopTimers();
    const { port, folder } = await aServer(onEnd);
    const events = async (): Promise<number> =>
      (await textAt(port, "/weir.ics")).match(/BEGIN:VEVENT/g)?.length ?? 0;
    for (let n = 3; n <= days.length; n++) {
      await writeFile(join(folder, "weir.yaml"), gardenText("Weir", ...days.slice(0, n)));
      await look();
      expect(await events()).toBe(2);
    }
    await look();
    expect(await events()).toBe(days.length);
  });

  test("a bug met with one garden does not keep others from being read", async () => {
    const load: GardenSource["load"] = (file, asOf) =>
      file.includes("bad") ? Promise.reject(new TypeError("our bug")) : testSource.load(file, asOf);
    const files = { "bad.yaml": first, "weir.yaml": first };
    const { port, lines } = await aServer(onEnd, { files, source: { ...testSource, load } });
    expect((await get(port, "/weir.ics")).status).toBe(200);
    expect((await get(port, "/bad.ics")).status).toBe(500);
    expect(lines.some((line) => line.startsWith("bad: bug: TypeError: our bug"))).toBe(true);
  });
});

describe("a folder of gardens", () => {
  test("takes up a new file, and gives it an address", async () => {
    const { port, folder, server } = await aServer(onEnd);
    expect((await get(port, "/abbey.ics")).status).toBe(404);
    await writeFile(join(folder, "abbey.yml"), gardenText("Abbey", "2027-07-01"));
    await until(async () => (await get(port, "/abbey.ics")).status === 200);
    expect(
      server
        .links()
        .map(({ title }) => title)
        .sort(),
    ).toEqual(["Abbey", "Weir"]);
  });

  test("a removed file keeps its last good calendar for a minute, then its addresses end", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    const { port, folder, lines } = await aServer(onEnd, { nowMs: () => nowMs });
    await rm(join(folder, "weir.yaml"));
    await until(async () => (await textAt(port, "/weir")).includes("cannot-read"));
    nowMs += 59_000;
    expect((await get(port, "/weir.ics")).status).toBe(200);
    nowMs += 2_000;
    await until(async () => (await get(port, "/weir.ics")).status === 404);
    expect(lines).toContain("weir: its file is gone, and so are its addresses");
  });

  test("a file that comes back goes on where it was", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    const { port, folder } = await aServer(onEnd, { nowMs: () => nowMs });
    await rm(join(folder, "weir.yaml"));
    await until(async () => (await textAt(port, "/weir")).includes("cannot-read"));
    nowMs += 120_000;
    await until(async () => (await get(port, "/weir.ics")).status === 404);
    await writeFile(join(folder, "weir.yaml"), moved);
    await until(async () => (await textAt(port, "/weir.ics")).includes(newDay));
    expect(sequences(await textAt(port, "/weir.ics"))).toEqual([0, 1]);
  });

  test("that is away as a whole, as a disk may be, takes no garden with it", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    stopTimers();
    const { port, folder, lines } = await aServer(onEnd, { nowMs: () => nowMs });
    onEnd(() => rm(`${folder}-away`, { recursive: true, force: true }));
    await rename(folder, `${folder}-away`);
    await look();
    expect(lines.some((line) => line.includes("does not exist"))).toBe(true);
    nowMs += 3_600_000;
    await look();
    expect((await get(port, "/weir.ics")).status).toBe(200);
    expect(await textAt(port, "/weir")).not.toContain("cannot-read");
    await rename(`${folder}-away`, folder);
    await writeFile(join(folder, "weir.yaml"), moved);
    await look();
    await look();
    expect(await textAt(port, "/weir.ics")).toContain(newDay);
    expect(lines.filter((line) => line.includes("does not exist"))).toHaveLength(1);
  });

  test("leaves out rule files, other files, and folders that are called like gardens", async () => {
    stopTimers();
    const rules = "version: 1\nrules:\n  - id: mine\n";
    const { server, folder } = await aServer(onEnd, {
      files: { "weir.yaml": first, "my-rules.yaml": rules },
    });
    await mkdir(join(folder, "folder.yaml"));
    await look();
    expect(server.links().map(({ title }) => title)).toEqual(["Weir"]);
    for (const name of [
      ".weir.yaml",
      "#weir.yaml",
      "weir.yaml~",
      "weir.yaml.tmp",
      "weir.json",
      "weather.csv",
      ".yaml",
    ])
      expect(isGardenFileName(name), name).toBe(false);
  });

  test("a garden that is not yet read is read for the request that asks for it", async () => {
    const folder = await aFolder(onEnd);
    for (const name of ["abbey", "mill", "weir"])
      await writeFile(join(folder, `${name}.yaml`), first);
    const asked: string[] = [];
    let goOn = (): void => undefined;
    const held = new Promise<void>((resolve) => (goOn = resolve));
    const load: GardenSource["load"] = async (file, asOf) => {
      asked.push(basename(file));
      if (file.endsWith("abbey.yaml")) await held;
      return testSource.load(file, asOf);
    };
    const log = (): void => undefined;
    const options = { gardens: [folder], stateDir: join(folder, "state"), version: "1", log };
    const started = await serveGardens({ ...options, source: { ...testSource, load } });
    if (!started.ok) throw new Error("not started");
    onEnd(() => started.value.stop());
    const port = Number(new URL(started.value.origins[0] ?? "").port);
    await until(() => asked.length === 1);
    expect((await get(port, "/weir.ics")).status).toBe(200);
    expect(asked).toEqual(["abbey.yaml", "weir.yaml"]);
    goOn();
    await started.value.ready;
    expect((await get(port, "/abbey.ics")).status).toBe(200);
  });
});

test.each([
  ["own rule file is", "rules: 'own/named' # mine"],
  ["weather files are", "weather: { seen: a.csv, forecast: own/named }"],
])("the garden's %s watched with it", async (_, key) => {
  stopTimers();
  const folder = await aFolder(onEnd);
  await writeFile(join(folder, "weir.yaml"), `garden: Weir\n${key}\nbeds: []\n`);
  await mkdir(join(folder, "own"));
  await writeFile(join(folder, "own", "named"), "x");
  let loads = 0;
  const source = gardenSource({
    loadPlan: () => {
      loads++;
      const at = { line: 1, column: 1 };
      const problem = { code: "named", file: "own/named", at, message: "no", mend: "mend" };
      return Promise.resolve({ ok: false, problems: [problem] });
    },
  });
  await aServer(onEnd, { gardens: [folder], source });
  await look();
  expect(loads).toBe(1);
  await writeFile(join(folder, "own", "named"), "a longer text");
  await look();
  expect(loads).toBe(1);
  await look();
  expect(loads).toBe(2);
});

describe("over a restart", () => {
  test("the calendar goes on: same bytes and date when nothing changed, the next SEQUENCE when it did", async () => {
    let nowMs = Date.UTC(2027, 4, 1);
    const clock = { nowMs: () => nowMs };
    const one = await aServer(onEnd, clock);
    const before = await get(one.port, "/weir.ics");
    await one.server.stop();
    nowMs += 86_400_000;
    const gardens = [one.folder];
    const two = await aServer(onEnd, { ...clock, gardens, stateDir: one.stateDir });
    const same = await get(two.port, "/weir.ics");
    expect(same.body).toEqual(before.body);
    expect(same.headers["last-modified"]).toBe(before.headers["last-modified"]);
    await two.server.stop();
    await writeFile(join(one.folder, "weir.yaml"), moved);
    const three = await aServer(onEnd, { ...clock, gardens, stateDir: one.stateDir });
    expect(sequences(await textAt(three.port, "/weir.ics"))).toEqual([0, 1]);
  });

  test("a file broken meanwhile keeps its calendar, and its page says what is wrong", async () => {
    const one = await aServer(onEnd);
    const before = await get(one.port, "/weir.ics");
    await one.server.stop();
    await writeFile(join(one.folder, "weir.yaml"), "broken");
    const two = await aServer(onEnd, { gardens: [one.folder], stateDir: one.stateDir });
    expect((await get(two.port, "/weir.ics")).body).toEqual(before.body);
    expect(await textAt(two.port, "/weir")).toContain("broken: mend it");
    await writeFile(join(one.folder, "weir.yaml"), moved);
    await until(async () => (await textAt(two.port, "/weir")).includes("06-27"));
    expect(sequences(await textAt(two.port, "/weir.ics"))).toEqual([0, 1]);
  });

  test.each([
    "",
    "{",
    "null",
    '{"keptVersion":1}',
    '{"keptVersion":2,"version":"1.0.0","calendar":"x"}',
  ])(
    "a damaged record (%s) is set aside and told of, and the calendar begins anew",
    async (text) => {
      const one = await aServer(onEnd);
      await one.server.stop();
      const [name = ""] = await readdir(one.stateDir);
      await writeFile(join(one.stateDir, name), text);
      const two = await aServer(onEnd, { gardens: [one.folder], stateDir: one.stateDir });
      expect((await get(two.port, "/weir.ics")).status).toBe(200);
      expect(two.lines.some((line) => line.includes("was damaged"))).toBe(true);
      expect((await readdir(one.stateDir)).sort()).toEqual([name, `${name}.damaged`].sort());
    },
  );

  test("another garden under the same file name begins anew", async () => {
    const one = await aServer(onEnd);
    await one.server.stop();
    await writeFile(join(one.folder, "weir.yaml"), gardenText("Abbey", "2027-07-01"));
    const two = await aServer(onEnd, { gardens: [one.folder], stateDir: one.stateDir });
    expect(await textAt(two.port, "/weir.ics")).toContain("20270701");
    expect(two.lines.some((line) => line.includes("begins anew"))).toBe(true);
  });

  test("a state folder that can't be written is told of, and the gardens are served all the same", async () => {
    const folder = await aFolder(onEnd);
    await writeFile(join(folder, "a-file"), "");
    const { port, lines } = await aServer(onEnd, { stateDir: join(folder, "a-file", "state") });
    expect((await get(port, "/weir.ics")).status).toBe(200);
    expect(lines.some((line) => line.includes("is not in a folder"))).toBe(true);
  });
});

test("at midnight in the garden's zone the page moves on to the next day, and its tag with it", async () => {
  // 23:30 in Dublin, which is an hour ahead of UTC in June.
  let nowMs = Date.UTC(2027, 5, 12, 22, 30);
  const { port } = await aServer(onEnd, { nowMs: () => nowMs });
  const before = await get(port, "/weir");
  expect(before.body.toString()).toContain("today 2027-06-12");
  nowMs += 29 * 60_000;
  expect((await get(port, "/weir")).headers.etag).toBe(before.headers.etag);
  nowMs += 60_000;
  const after = await get(port, "/weir", { "if-none-match": before.headers.etag ?? "" });
  expect(after.status).toBe(200);
  expect(after.body.toString()).toContain("today 2027-06-13");
  expect(after.headers["last-modified"]).toBe("Sat, 12 Jun 2027 23:00:00 GMT");
});

test("an edit is planned with the calendar that is served, also after a stop", async () => {
  const asked: AsOf[] = [];
  const source = gardenSource({
    loadPlan: (_, asOf) => {
      asked.push(asOf);
      const plan = aPlan({ rounds: roundsOn(["2027-06-12"]) });
      const { previous } = asOf;
      return Promise.resolve({ ok: true, value: { plan, ...given({ previous }), notices: [] } });
    },
    page: testSource.page,
  });
  const { folder, stateDir, port, server } = await aServer(onEnd, { source });
  const served = await textAt(port, "/weir.ics");
  expect(asked).toMatchObject([{ nowMs: expect.any(Number) as number }]);
  expect(asked[0]).not.toHaveProperty("previous");
  await writeFile(join(folder, "weir.yaml"), moved);
  await until(() => asked.length === 2);
  await server.stop();
  await aServer(onEnd, { source, stateDir, gardens: [folder] });
  await until(() => asked.length === 3);
  for (const { previous } of asked.slice(1)) expect(previous).toBe(served);
});

test("at midnight in its zone a garden is planned anew, as what is planned may depend on the day", async () => {
  let nowMs = Date.UTC(2027, 5, 12, 22, 59, 59);
  const asked: number[] = [];
  const load: GardenSource["load"] = (file, asOf) => {
    asked.push(asOf.nowMs);
    return testSource.load(file, asOf);
  };
  stopTimers();
  await aServer(onEnd, { nowMs: () => nowMs, source: { ...testSource, load } });
  await look();
  expect(asked).toEqual([nowMs]);
  nowMs += 1000;
  await look();
  await look();
  expect(asked).toEqual([nowMs - 1000, nowMs]);
});

test.each([
  ["none", { readPrint: "a", lastPrint: "a" }],
  ["none", { readPrint: "a", lastPrint: "b" }],
  ["wait", { readPrint: "b", lastPrint: "b" }],
  ["wait", { readPrint: "b" }],
  ["read", { readPrint: "b", lastPrint: "a" }],
  ["read", {}],
] as const)("%s after a look at %o and then a", (step, seen) => {
  expect(stepOf(seen, "a")).toBe(step);
});

describe("a garden that another process is at work on", () => {
  const heldIn = (folder: string): string => join(folder, ".weir.yaml.lock");
  const anotherProcess = `${process.ppid} ${hostname()} a1`;

  test("is read when that is done, and its lock is no garden", async () => {
    stopTimers();
    let onPause = (): Promise<void> => Promise.resolve();
    const { port, folder, lines } = await aServer(onEnd, { pause: () => onPause() });
    await writeFile(heldIn(folder), anotherProcess);
    await writeFile(join(folder, "weir.yaml"), moved);
    await look();
    await look();
    expect(await textAt(port, "/weir.ics")).not.toContain(newDay);
    expect(lines.filter((line) => line.includes("is working on it"))).toHaveLength(1);
    await look();
    expect(lines.filter((line) => line.includes("is working on it"))).toHaveLength(1);
    onPause = () => rm(heldIn(folder), { force: true });
    await look();
    expect(await textAt(port, "/weir.ics")).toContain(newDay);
    expect(await readdir(folder)).toEqual(["weir.yaml"]);
    expect(await textAt(port, "/")).not.toContain("lock");
  });

  test("goes on from what another server kept of it meanwhile", async () => {
    // One clock: a server whose clock is behind stamps anew what the other has told, whoever is first.
    const clock = { nowMs: () => Date.UTC(2027, 4, 1, 8) };
    const one = await aServer(onEnd, clock);
    await writeFile(join(one.folder, "weir.yaml"), moved);
    await until(async () => (await textAt(one.port, "/weir.ics")).includes(newDay));
    const shared = { gardens: [one.folder], stateDir: one.stateDir };
    const other = await aServer(onEnd, { ...shared, ...clock });
    await writeFile(join(one.folder, "weir.yaml"), first);
    const back = (port: number) => async () =>
      sequences(await textAt(port, "/weir.ics")).at(-1) === 2;
    await until(back(one.port));
    await until(back(other.port));
    expect(await textAt(other.port, "/weir.ics")).toBe(await textAt(one.port, "/weir.ics"));
  });
});
