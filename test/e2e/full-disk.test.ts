import { execFileSync, spawn, spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { examplePath, scratchFile, scratchFolder } from "../support/run-cli.js";

const program = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const garden = examplePath("back-garden");
const broken = scratchFile("broken.yaml", "version: 1\n");

/** A line of the shell in which `feedround` is the program. */
function sh(line: string): { code: number | null; stdout: string; stderr: string } {
  const told = spawnSync("sh", ["-c", `feedround() { "$NODE" "$MAIN" "$@"; }; ${line}`], {
    encoding: "utf8",
    env: { ...process.env, NODE: process.execPath, MAIN: program, GARDEN: garden, BROKEN: broken },
  });
  return { code: told.status, stdout: told.stdout, stderr: told.stderr };
}

describe.skipIf(!existsSync("/dev/full"))("a full disk", () => {
  test.each(["--version", "--help", "plan $GARDEN", "sheet $GARDEN", "check $BROKEN --json"])(
    "under standard output is told in a line: %s",
    (argv) => {
      expect(sh(`feedround ${argv} >/dev/full`)).toEqual({
        ...{ code: 3, stdout: "" },
        stderr: "standard output: the disk is full: make room\n",
      });
    },
  );

  test("under standard error does no harm", () => {
    expect(sh("feedround check $BROKEN 2>/dev/full")).toEqual({ code: 1, stdout: "", stderr: "" });
    expect(sh("feedround --version 2>/dev/full").code).toBe(0);
  });
});

/** A disk of 64 kB, seen by one line of the shell alone. */
const smallDisk = (folder: string): string[] => [
  ...["-rm", "sh", "-c"],
  `mount -t tmpfs -o size=64k none "${folder}" && cd "${folder}" && cp "$2" plot.yaml && eval "$1"`,
  "sh",
];
const probe = spawnSync("unshare", [...smallDisk(scratchFolder()), "true", garden]);

describe.skipIf(probe.status !== 0)("a disk that fills up", () => {
  const onSmallDisk = (line: string): string => {
    const unfailing = `${line.replaceAll("feedround", `"${process.execPath}" "${program}"`)}; true`;
    const argv = [...smallDisk(scratchFolder()), unfailing, garden];
    return execFileSync("unshare", argv, { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
  };

  test("half-way through an output is told, too", () => {
    const many = Array.from({ length: 12 }, () => `"${garden}"`).join(" ");
    const line = `cat ${many} >filling; feedround sheet plot.yaml >sheet.html 2>&2; echo $?`;
    expect(onSmallDisk(line)).toBe("3\n");
  });

  test("leaves the garden file as it was, without a lock, and says so", () => {
    const line =
      "head -c 1000000 /dev/zero >filling 2>/dev/null; " +
      "feedround log plot.yaml --planting toms --stock 30mL 2>&1; echo $?; " +
      `cmp plot.yaml "${garden}" && ls -A`;
    expect(onSmallDisk(line)).toBe(
      "plot.yaml: the disk is full: make room\n3\nfilling\nplot.yaml\n",
    );
  });
});

test.each([
  ["sheet", [garden], 0],
  ["check", [broken, "--json"], 1],
])(
  "a reader that stops early leaves %s its exit code, and is no trouble",
  async (name, argv, is) => {
    const child = spawn(process.execPath, [program, name, ...argv]);
    child.stdout.destroy();
    let told = "";
    child.stderr.setEncoding("utf8").on("data", (text: string) => (told += text));
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect({ code, told }).toEqual({ code: is, told: "" });
  },
);

test("no other part of the program writes to the process's outputs", () => {
  const folder = fileURLToPath(new URL("../../src/", import.meta.url));
  const writers = readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .filter((name) =>
      /process\.std(out|err)\.write/.test(readFileSync(join(folder, name), "utf8")),
    );
  expect(writers.sort()).toEqual([join("cli", "standard-output.ts")]);
});
