import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { type WorkerPool, workerPool } from "../../src/serve/worker-pool.js";
import { aFolder } from "./a-server.js";

type Job = "thread" | "throw" | "exit" | "reject late" | "fill the memory" | "wait";

/** In plain JavaScript, since threads know no TypeScript. */
const script = `
import { parentPort, threadId } from "node:worker_threads";
parentPort.on("message", (job) => {
  if (job === "thread") parentPort.postMessage({ done: threadId });
  if (job === "throw") parentPort.postMessage({ failed: new TypeError("ours") });
  if (job === "exit") process.exit(3);
  if (job === "reject late") void Promise.reject(new RangeError("nobody caught it"));
  if (job === "fill the memory") for (const all = []; ; ) all.push(new Array(1000).fill(all.length));
});
`;

async function aPool(most: number): Promise<WorkerPool<Job, number>> {
  const file = join(await aFolder(onTestFinished), "thread.mjs");
  await writeFile(file, script);
  const pool = workerPool<Job, number>({ entry: pathToFileURL(file), most, heapMb: 32 });
  onTestFinished(() => pool.close());
  return pool;
}

const failure = async (done: Promise<number>): Promise<string> =>
  done.then(String, (error: unknown) => String(error));

test.each([
  ["throw", "TypeError: ours"],
  ["exit", "Error: its thread ended"],
  ["reject late", "RangeError: nobody caught it"],
  ["fill the memory", /reaching memory limit/],
] as const)("a job that may %s costs itself alone, also of those that wait", async (job, why) => {
  const pool = await aPool(1);
  const jobs: Job[] = ["thread", job, "thread", job, "thread"];
  const [first, second, third, fourth, fifth] = await Promise.all(
    jobs.map((each) => failure(pool.run(each))),
  );
  for (const failed of [second, fourth]) expect(failed).toMatch(why);
  for (const done of [first, third, fifth]) expect(done).toMatch(/^\d+$/);
});

test("jobs are shared among threads, as many as there may be, which are used again", async () => {
  const pool = await aPool(3);
  const threads = await Promise.all(Array.from({ length: 30 }, () => pool.run("thread")));
  expect(new Set(threads).size).toBeLessThanOrEqual(3);
  expect(new Set(threads).size).toBeGreaterThan(1);
});

test("one job after the other needs one thread", async () => {
  const pool = await aPool(3);
  const threads: number[] = [];
  for (let i = 0; i < 5; i++) threads.push(await pool.run("thread"));
  expect(new Set(threads).size).toBe(1);
});

test("closing waits for jobs, and for those that fail", async () => {
  const pool = await aPool(2);
  const jobs = [pool.run("thread"), pool.run("exit"), pool.run("thread")].map(failure);
  await pool.close();
  expect((await Promise.all(jobs)).sort()).toEqual([
    expect.stringMatching(/^\d+$/),
    expect.stringMatching(/^\d+$/),
    "Error: its thread ended",
  ]);
});
