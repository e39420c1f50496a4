/** Which of the sources the hunt has reached, as V8 counts it: by room, and by line where asked. */
import { readFileSync } from "node:fs";
import { type Profiler, Session } from "node:inspector/promises";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { convert } from "ast-v8-to-istanbul";
import { parseSync } from "vite";

export async function watchCoverage(): Promise<Session> {
  const session = new Session();
  session.connect();
  await session.post("Profiler.enable");
  await session.post("Profiler.startPreciseCoverage", { callCount: true, detailed: true });
  return session;
}

interface Reached {
  readonly lines: Set<number>;
  readonly missedLines: Set<number>;
  branches: number;
  missedBranches: number;
}

const made = fileURLToPath(new URL("../../", import.meta.url));

/** A line for each room, and for each file whose path holds `missed` its lines that were not reached. */
export async function coverageSoFar(session: Session, missed?: string): Promise<string> {
  const { result } = await session.post("Profiler.takePreciseCoverage");
  const files = new Map<string, Reached>();
  for (const script of result) {
    const url = script.url.startsWith("file:") ? fileURLToPath(script.url) : "";
    const path = relative(made, url).replace(/\.js$/, ".ts");
    if (/^src\/(?!compiled\/)/.test(path)) files.set(path, await reachedIn(script, url));
  }
  return [...roomLines(files), ...(missed === undefined ? [] : missedLines(files, missed))].join(
    "\n",
  );
}

async function reachedIn(coverage: Profiler.ScriptCoverage, file: string): Promise<Reached> {
  const code = readFileSync(file, "utf8");
  const sourceMap = JSON.parse(readFileSync(`${file}.map`, "utf8")) as { version: 3 };
  const ast = parseSync(file, code).program;
  const data = await convert({ ast, code, coverage, sourceMap, wrapperLength: 0 } as never);
  const reached: Reached = {
    lines: new Set(),
    missedLines: new Set(),
    branches: 0,
    missedBranches: 0,
  };
  for (const { statementMap, s, b } of Object.values(data)) {
    for (const [id, { start }] of Object.entries(statementMap))
      ((s[id] ?? 0) > 0 ? reached.lines : reached.missedLines).add(start.line);
    for (const counts of Object.values(b)) {
      reached.branches += counts.length;
      reached.missedBranches += counts.filter((count) => count === 0).length;
    }
  }
  return reached;
}

function roomLines(files: ReadonlyMap<string, Reached>): string[] {
  const rooms = new Map<string, Reached[]>();
  for (const [path, reached] of files) {
    const [, room = ""] = path.split("/");
    const name = room.endsWith(".ts") ? "src" : `src/${room}`;
    rooms.set(name, [...(rooms.get(name) ?? []), reached]);
  }
  return [...rooms]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([room, all]) => {
      const sum = (of: (one: Reached) => number): number => all.reduce((n, one) => n + of(one), 0);
      const missed = sum(
        (one) => [...one.missedLines].filter((line) => !one.lines.has(line)).length,
      );
      const lines = sum((one) => one.lines.size);
      const branches = sum((one) => one.branches);
      const taken = branches - sum((one) => one.missedBranches);
      return `${room}: lines ${percent(lines, lines + missed)}, branches ${percent(taken, branches)}`;
    });
}

function percent(part: number, whole: number): string {
  return whole === 0 ? "-" : `${((100 * part) / whole).toFixed(1)} %`;
}

function missedLines(files: ReadonlyMap<string, Reached>, part: string): string[] {
  return [...files]
    .filter(([path]) => path.includes(part))
    .map(([path, { lines, missedLines: missed }]) => {
      const left = [...missed].filter((line) => !lines.has(line)).sort((a, b) => a - b);
      return `${path}: ${left.join(" ")}`;
    });
}
