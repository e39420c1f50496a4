import {
  existsSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { withLocks } from "../src/lock.js";
import { scratchFile } from "./support/run-cli.js";

const aGarden = (): string => scratchFile("plot.yaml", "garden: Plot\n");
const lockOf = (file: string): string => join(dirname(file), ".plot.yaml.lock");
const never = (): Promise<void> => Promise.reject(new Error("nobody should wait"));
const noTime = (): Promise<void> => Promise.resolve();

/** Numbers of processes end well below this. */
const noProcess = 2 ** 30;

/** The mark of a lock of another process, thread or place. */
async function markOf(differs: { pid?: number; thread?: number; where?: string }): Promise<string> {
  const file = aGarden();
  const read = (): Promise<string> => Promise.resolve(readFileSync(lockOf(file), "utf8"));
  const done = await withLocks([file], read);
  const [pid, host, where, thread] = (done.ok ? done.value : "").split(" ");
  return [
    ...[differs.pid ?? pid, host, differs.where ?? where, differs.thread ?? thread],
    "a1",
  ].join(" ");
}
const running = await markOf({ pid: process.ppid });
const gone = await markOf({ pid: noProcess });
const ofThis = await markOf({});
const ofThread = await markOf({ thread: 7 });
const ofNamesake = await markOf({ pid: noProcess, where: "b2" });

describe("a lock", () => {
  test("stands beside the file with process and computer while work is done, and then is gone", async () => {
    const file = aGarden();
    const done = await withLocks([file], () => Promise.resolve(readFileSync(lockOf(file), "utf8")));
    expect(done).toEqual({
      ok: true,
      value: expect.stringMatching(`^${process.pid} ${hostname()} `) as string,
    });
    expect(readdirSync(dirname(file))).toEqual(["plot.yaml"]);
  });

  test("is gone after work that failed", async () => {
    const file = aGarden();
    await expect(withLocks([file], () => Promise.reject(new Error("oh")))).rejects.toThrow("oh");
    expect(existsSync(lockOf(file))).toBe(false);
  });

  test("lets one after the other work, whatever name they call the file by", async () => {
    const file = aGarden();
    const link = join(dirname(file), "link.yaml");
    symlinkSync(file, link);
    const said: string[] = [];
    let finish = (): void => undefined;
    const finished = new Promise<void>((resolve) => (finish = resolve));
    let begin = (): void => undefined;
    const begun = new Promise<void>((resolve) => (begin = resolve));
    const first = withLocks([file], async () => {
      said.push("first begins");
      begin();
      await finished;
      said.push("first ends");
    });
    await begun;
    const pause = async (): Promise<void> => {
      finish();
      await first;
    };
    await withLocks([link], () => Promise.resolve(said.push("second")), { pause });
    expect(said).toEqual(["first begins", "first ends", "second"]);
  });

  test("that is kept too long is told with what holds it, and the work is not begun", async () => {
    const file = aGarden();
    writeFileSync(lockOf(file), running);
    let pauses = 0;
    const pause = (): Promise<void> => {
      pauses++;
      return Promise.resolve();
    };
    const done = await withLocks([file], () => Promise.reject(new Error("begun")), { pause });
    expect(done).toMatchObject({ ok: false, problems: [{ code: "locked" }] });
    const [problem] = done.ok ? [] : done.problems;
    expect(problem?.message).toContain(`${file}: process ${process.ppid} on ${hostname()} `);
    expect(problem?.mend).toContain(`delete ${lockOf(file)}`);
    expect(pauses).toBe(100);
    expect(readFileSync(lockOf(file), "utf8")).toBe(running);
  });

  test("of several files leaves none behind when one is kept", async () => {
    const [one, other] = [aGarden(), aGarden()];
    writeFileSync(lockOf(other), running);
    const done = await withLocks([one, other], () => Promise.resolve(1), { pause: noTime });
    expect(done.ok).toBe(false);
    expect(existsSync(lockOf(one))).toBe(false);
  });

  test.each([
    ["its process is gone", gone],
    ["its number is this process's, which does not hold it", ofThis],
  ])("is taken over when %s", async (_, left) => {
    const file = aGarden();
    writeFileSync(lockOf(file), left);
    expect(await withLocks([file], () => Promise.resolve(1), { pause: never })).toEqual({
      ok: true,
      value: 1,
    });
    expect(readdirSync(dirname(file))).toEqual(["plot.yaml"]);
  });

  test.each([
    ["another process", running],
    ["another thread of this process", ofThread],
    ["a computer of the same name, or a container", ofNamesake],
  ])("of %s is waited for", async (_, mark) => {
    const file = aGarden();
    writeFileSync(lockOf(file), mark);
    const done = await withLocks([file], () => Promise.resolve(1), { pause: noTime });
    expect(done.ok).toBe(false);
    expect(readFileSync(lockOf(file), "utf8")).toBe(mark);
  });

  test("that is left is taken away by one at a time", async () => {
    const file = aGarden();
    const turn = `${lockOf(file)}.turn`;
    writeFileSync(lockOf(file), gone);
    writeFileSync(turn, "");
    const pause = (): Promise<void> => {
      rmSync(turn, { force: true });
      return Promise.resolve();
    };
    const done = await withLocks([file], () => Promise.resolve(existsSync(turn)), { pause });
    expect(done).toEqual({ ok: true, value: false });
    expect(readdirSync(dirname(file))).toEqual(["plot.yaml"]);
  });

  test("that somebody died over while taking it away is free again when that is old", async () => {
    const file = aGarden();
    const turn = `${lockOf(file)}.turn`;
    for (const path of [lockOf(file), turn]) {
      writeFileSync(path, "");
      utimesSync(path, 1_000_000, 1_000_000);
    }
    const nowMs = (): number => (1_000_000 + 11 * 60) * 1000;
    const done = await withLocks([file], () => Promise.resolve(1), { pause: noTime, nowMs });
    expect(done.ok).toBe(true);
    expect(readdirSync(dirname(file))).toEqual(["plot.yaml"]);
  });

  test("of a file with the longest name is one, too", async () => {
    const name = `${"n".repeat(250)}.yaml`;
    const file = scratchFile(name, "garden: Plot\n");
    const names = (): Promise<string[]> => Promise.resolve(readdirSync(dirname(file)));
    const done = await withLocks([file], names);
    expect(done.ok ? done.value : []).toHaveLength(2);
    expect(await names()).toEqual([name]);
  });

  test.each([running, `${noProcess} another-computer a1`, ""])(
    "is taken over when it is old, whoever holds it: %j",
    async (left) => {
      const file = aGarden();
      writeFileSync(lockOf(file), left);
      utimesSync(lockOf(file), 1_000_000, 1_000_000);
      const at = (minutes: number) => ({
        pause: noTime,
        nowMs: () => (1_000_000 + minutes * 60) * 1000,
      });
      expect((await withLocks([file], () => Promise.resolve(1), at(9))).ok).toBe(false);
      expect((await withLocks([file], () => Promise.resolve(1), at(11))).ok).toBe(true);
    },
  );

  test("that can't be made stops nobody: the work itself meets what is wrong", async () => {
    const work = (): Promise<number> => Promise.resolve(1);
    expect(await withLocks(["/nowhere/plot.yaml"], work)).toEqual({ ok: true, value: 1 });
  });
});
