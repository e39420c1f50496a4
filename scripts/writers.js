/**
 * Pairs of processes that write into one garden file at once, started together: what stands in the
 * file is what was told written. `npm run writers`, or `npm run writers -- 10` for fewer pairs.
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const program = fileURLToPath(new URL("../dist/cli/main.js", import.meta.url));
const pairs = Number(process.argv[2] ?? 1000);
const folder = mkdtempSync(join(tmpdir(), "feedround-writers-"));
const file = join(folder, "plot.yaml");
const garden = `version: 1
garden: Weir Cottage
timezone: Europe/Dublin
season: { from: 2027-03-01, to: 2027-10-31 }
can: 10 L
feeding: { days: [mon, thu] }
beds:
  - id: south
    plantings: [{ id: toms, crop: tomato, plants: 6, transplanted: 2027-05-20, water: 2 L per plant }]
`;

/** Gives the exit code, and whether it told that it wrote. */
function log(ml) {
  const argv = ["log", file, "--planting", "toms", "--stock", `${ml}mL`, "--again"];
  const child = spawn(process.execPath, [program, ...argv, "--today", "2027-07-01"]);
  let told = "";
  child.stdout.resume();
  child.stderr.setEncoding("utf8").on("data", (text) => (told += text));
  return new Promise((resolve) =>
    child.on("close", (code) =>
      resolve({ ml, code, isWritten: told.endsWith(": written\n"), told }),
    ),
  );
}

const sum = { pairs: 0, toldWritten: 0, inFile: 0, refused: 0, otherwise: 0 };
for (let i = 0; i < pairs; i++) {
  writeFileSync(file, garden);
  const both = await Promise.all([log(20), log(21)]);
  const written = both.filter(({ isWritten }) => isWritten).map(({ ml }) => `stock: ${ml} mL`);
  const text = readFileSync(file, "utf8");
  const there = text.match(/stock: \d+ mL/g) ?? [];
  sum.pairs++;
  sum.toldWritten += written.length;
  sum.inFile += there.length;
  sum.refused += both.filter(({ code, isWritten }) => code === 3 && !isWritten).length;
  const isRight = written.length === there.length && written.every((line) => there.includes(line));
  const isClean = readdirSync(folder).join() === "plot.yaml";
  const isKnown = both.every(({ code, isWritten }) => (isWritten ? code === 0 : code === 3));
  if (!isRight || !isClean || !isKnown) {
    sum.otherwise++;
    process.stderr.write(
      `pair ${i}: ${JSON.stringify({ both, text, left: readdirSync(folder) })}\n`,
    );
  }
}
rmSync(folder, { recursive: true });
process.stdout.write(`${JSON.stringify(sum)}\n`);
if (sum.otherwise > 0 || sum.toldWritten !== sum.inFile) process.exitCode = 1;
