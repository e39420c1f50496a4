/**
 * How long the program takes from the command line to its end, in processor time of its process,
 * against bare `node -e 0`, in pairs, after `npm run build`. The second and later runs of a command are
 * meant. Wanted, of Node.js 24 and of 20: `--version` 1.3 and 2 times, a command on the back garden 3
 * and 4, on 40 beds 5 and 6. Other Node.js are measured where `OTHER_NODES` has their paths, with a
 * colon between.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { bench, describe } from "vitest";
import { examplePath, scratchFolder } from "../support/run-cli.js";

const main = new URL("../../dist/cli/main.js", import.meta.url).pathname;
const env = { ...process.env, XDG_CACHE_HOME: scratchFolder() };
const [few, many] = ["back-garden", "shared-garden"].map(examplePath) as [string, string];
const pairs = 9;

const cases = [
  { argv: ["--version"], wanted: { new: 1.3, old: 2 } },
  { argv: ["check", few], wanted: { new: 3, old: 4 } },
  { argv: ["calendar", few], wanted: { new: 3, old: 4 } },
  { argv: ["check", many], wanted: { new: 5, old: 6 } },
  { argv: ["calendar", many], wanted: { new: 5, old: 6 } },
];

/** Of user and system, as the shell that waits for it is told. */
function processorMs(program: string, argv: readonly string[]): number {
  const timed = 'TIMEFORMAT="%U %S"; time "$@" > /dev/null 2>&1';
  const { stderr } = spawnSync("bash", ["-c", timed, "-", program, ...argv], {
    env,
    encoding: "utf8",
  });
  return (
    1000 *
    stderr
      .trim()
      .split(" ")
      .map(Number)
      .reduce((sum, s) => sum + s, 0)
  );
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN;
}

const programs = [process.execPath, ...(process.env["OTHER_NODES"] ?? "").split(":")];
for (const node of programs.filter((path) => path !== "")) {
  const version = execFileSync(node, ["--version"], { encoding: "utf8" }).trim();
  const age = version.startsWith("v20.") ? "old" : "new";
  describe(`start, ${version}`, () => {
    for (const { argv, wanted } of cases) {
      const what = argv.map((word) => word.replace(/.*\//, "")).join(" ");
      bench(
        what,
        () => {
          processorMs(node, [main, ...argv]);
          const measured = Array.from({ length: pairs }, () => [
            processorMs(node, ["-e", "0"]),
            processorMs(node, [main, ...argv]),
          ]);
          const ratio = median(measured.map(([bare = NaN, ours = NaN]) => ours / bare));
          const ms = Math.round(median(measured.map(([, ours = NaN]) => ours)));
          console.log(
            `${version} ${what}: ${ms} ms, ${ratio.toFixed(2)} x bare (wanted ${wanted[age]})`,
          );
        },
        { iterations: 1, warmupIterations: 0, time: 0, warmupTime: 0 },
      );
    }
  });
}
