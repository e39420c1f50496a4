/** A repository of garden files, published by fresh clones of it with the script of the examples. */
import { spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeEach, expect, test } from "vitest";
import { day } from "../../src/dates.js";
import { gardenText, planted } from "../support/a-garden.js";
import { earlierOf } from "../support/calendars.js";
import { scratchFolder } from "../support/run-cli.js";

const script = fileURLToPath(new URL("../../examples/home/publish-from-git.sh", import.meta.url));
const program = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const garden = { id: "weir-cottage", feeding: { days: ["sat"], time: "18:30" } };

let folder = "";
let remote = "";

beforeEach(() => {
  folder = scratchFolder();
  remote = join(folder, "remote.git");
  const bin = join(folder, "bin");
  mkdirSync(bin);
  writeFileSync(
    join(bin, "feedround"),
    `#!/bin/sh\nexec "${process.execPath}" "${program}" "$@"\n`,
  );
  chmodSync(join(bin, "feedround"), 0o755);
  // As on a machine that changes the ends of lines.
  writeFileSync(
    join(folder, ".gitconfig"),
    "[user]\nname = A grower\nemail = grower@localhost\n[core]\nautocrlf = true\n[init]\ndefaultBranch = main\n",
  );
  git(folder, "init", "--quiet", "--bare", remote);
  keep(gardenText(garden));
});

function run(cwd: string, command: string, args: readonly string[]) {
  const env = { PATH: `${join(folder, "bin")}:${process.env["PATH"] ?? ""}`, HOME: folder };
  return spawnSync(command, args, { cwd, env, encoding: "utf8" });
}

function git(cwd: string, ...args: readonly string[]): string {
  const { status, stdout, stderr } = run(cwd, "git", args);
  if (status !== 0) throw new Error(stderr);
  return stdout;
}

function freshClone(): string {
  const clone = join(scratchFolder(), "gardens");
  git(folder, "clone", "--quiet", remote, clone);
  return clone;
}

/** The garden file as the grower pushes it. */
function keep(text: string): void {
  const clone = freshClone();
  writeFileSync(join(clone, "weir-cottage.yaml"), text);
  git(clone, "add", ".");
  git(clone, "commit", "--quiet", "-m", "The garden");
  git(clone, "push", "--quiet", "origin", "HEAD:main");
}

/** On a machine that has nothing yet. */
function publish(today: string, ...before: readonly string[]) {
  const args = [script, ...before, "--today", today, "weir-cottage.yaml"];
  const { status, stderr } = run(freshClone(), "sh", args);
  return { status, stderr };
}

function published(): string {
  return git(remote, "show", "published:weir-cottage.ics");
}

const eventsIn = (text: string) => earlierOf(text).events;
const firstDay = "2027-04-01";
const laterDay = "2027-07-20";

test("two fresh clones publish one calendar: same names, the past as it was", () => {
  expect(publish(firstDay, "--first").status).toBe(0);
  const first = published();
  expect(first).toContain("\r\n");
  expect(publish(laterDay).status).toBe(0);
  expect(eventsIn(published())).toEqual(eventsIn(first));

  keep(gardenText({ ...garden, ...planted({}, { id: "late", transplanted: "2027-07-01" }) }));
  expect(publish(laterDay).status).toBe(0);
  const now = eventsIn(published());
  const past = eventsIn(first).filter((event) => event.day < day(laterDay));
  expect(past.length).toBeGreaterThan(0);
  expect(now.filter((event) => event.day < day(laterDay))).toEqual(past);
  expect(now.map(({ uid }) => uid)).toEqual(
    expect.arrayContaining(eventsIn(first).map(({ uid }) => uid)),
  );
  expect(now.length).toBeGreaterThan(eventsIn(first).length);
});

test("nothing is published where the last one cannot be restored", () => {
  expect(publish(firstDay)).toMatchObject({
    status: 3,
    stderr: expect.stringContaining("cannot be fetched") as string,
  });
  expect(publish(firstDay, "--first").status).toBe(0);
  const first = git(remote, "rev-parse", "published");
  expect(publish(laterDay, "--first")).toEqual({
    status: 3,
    stderr: "origin has a branch published already: leave --first out\n",
  });
  const clone = freshClone();
  renameSync(remote, `${remote}.away`);
  for (const first of [[], ["--first"]])
    expect(run(clone, "sh", [script, ...first, "weir-cottage.yaml"])).toMatchObject({
      status: 3,
      stderr: expect.stringContaining("nothing was published") as string,
    });
  renameSync(`${remote}.away`, remote);
  expect(git(remote, "rev-parse", "published")).toBe(first);
});

test("a branch of something else is not published over", () => {
  const clone = freshClone();
  git(clone, "push", "--quiet", "origin", "HEAD:refs/heads/published");
  expect(publish(firstDay)).toMatchObject({
    status: 3,
    stderr: expect.stringContaining("holds no published gardens") as string,
  });
});

test("of two runs at once one is refused, and nothing of the first is lost", () => {
  expect(publish(firstDay, "--first").status).toBe(0);
  const [clone, other] = [freshClone(), freshClone()];
  // Another run publishes just before this one's push.
  const hook = join(clone, ".git", "hooks", "pre-push");
  const args = [script, "--today", laterDay, "weir-cottage.yaml", "--index"];
  writeFileSync(hook, `#!/bin/sh\nunset GIT_DIR\ncd "${other}" && sh ${args.join(" ")}\n`);
  chmodSync(hook, 0o755);
  expect(run(clone, "sh", args.slice(0, -1))).toMatchObject({
    status: 3,
    stderr: expect.stringContaining("run this again") as string,
  });
  expect(git(remote, "ls-tree", "--name-only", "published")).toContain("index.html");
});

test("a garden that names a calendar of its own is told to name none", () => {
  keep(gardenText({ ...garden, calendar: { file: "own.ics" } }));
  const clone = freshClone();
  const { status, stderr } = run(clone, "sh", [script, "--first", "weir-cottage.yaml"]);
  expect(status).toBe(3);
  expect(stderr).toContain("take that line out");
  expect(git(remote, "branch", "--list", "published")).toBe("");
});

test("problems in one garden are told, and the others are published", () => {
  expect(publish(firstDay, "--first").status).toBe(0);
  const clone = freshClone();
  writeFileSync(join(clone, "weir-cottage.yaml"), "version: 1\n");
  writeFileSync(join(clone, "other.yaml"), gardenText({ ...garden, id: "other" }));
  git(clone, "add", ".");
  git(clone, "commit", "--quiet", "-m", "Two gardens");
  git(clone, "push", "--quiet", "origin", "HEAD:main");
  const before = published();
  expect(run(freshClone(), "sh", [script, "--today", laterDay, "."]).status).toBe(1);
  expect(published()).toBe(before);
  expect(git(remote, "ls-tree", "--name-only", "published")).toContain("other.ics");
});
