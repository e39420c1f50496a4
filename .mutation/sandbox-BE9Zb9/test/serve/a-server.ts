// @ts-nocheck
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { Agent, type IncomingHttpHeaders, request } from "node:http";
import { connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readEarlierCalendar } from "../../src/calendar/earlier-calendar.js";
import { day } from "../../src/dates.js";
import type { Problem, Result } from "../../src/problem.js";
import { type AsOf, gardenSource, type PlannedGarden } from "../../src/serve/garden-source.js";
import { type GardenServer, serveGardens, type ServeOptions } from "../../src/serve/serve.js";
import type { TickSheet } from "../../src/ticks/sheet.js";
import { given } from "../../src/values.js";
import { aPlan, aRound } from "../support/a-plan.js";

/** A folder of its own, gone when the test ends. */
export async function aFolder(onEnd: (undo: () => Promise<void>) => void): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), "feedround-serve-"));
  onEnd(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A small garden file: `name zone day day ...`, or `broken`. */
export function gardenText(name: string, ...days: string[]): string {
  return `${name} Europe/Dublin ${days.join(" ")}\n`;
}

/** Plans such a file as the real one would be planned; the page says what it was given. */
export const testSource = gardenSource({
  loadPlan: async (file, asOf) =>
    planOf(file, await readFile(file, "utf8").catch(() => undefined), asOf),
  page: (plan, { today, problems, subscribe }) =>
    `<!doctype html><title>${plan.garden.name}</title><style>p{color:#123}</style><p>today ${today}</p>` +
    `<p>rounds ${plan.rounds.map((round) => round.day).join(" ")}</p>` +
    `<p>problems ${problems.map((p) => p.code).join(" ")}</p>` +
    `<p>${subscribe?.webcal ?? ""}</p>${subscribe?.qrSvg ?? ""}`,
});

function planOf(file: string, text: string | undefined, { previous }: AsOf): Result<PlannedGarden> {
  const problem = (code: string): { ok: false; problems: Problem[] } => {
    const at = { line: 1, column: 1 };
    return { ok: false, problems: [{ code, file, at, message: code, mend: "mend it" }] };
  };
  if (text === undefined) return problem("cannot-read");
  const [name, timezone, ...days] = text.trim().split(/\s+/);
  if (name === undefined || timezone === undefined || name === "broken") return problem("broken");
  const rounds = days.map((d) => aRound({ day: day(d) }));
  const plan = aPlan({ rounds, garden: { id: name, name, timezone } });
  const isOurs = previous === undefined || readEarlierCalendar(previous, name).ok;
  const goesOn = isOurs
    ? { ...given({ previous }), notices: [] }
    : { notices: ["the calendar begins anew"] };
  return { ok: true, value: { plan, ticks: aSheet(days), ...goesOn } };
}

function aSheet(days: readonly string[]): TickSheet {
  const told = days.map(
    (each) => ({ day: day(each), state: "open", seen: "n", beds: [] }) as const,
  );
  return { amounts: "metric", rounds: told, steps: [], bottles: [], plantings: [], signs: [] };
}

export interface Running {
  readonly server: GardenServer;
  readonly port: number;
  readonly lines: string[];
  /** The folder of garden files, with `weir.yaml` in it. */
  readonly folder: string;
  readonly stateDir: string;
}

/** Served on loopback from a folder with one garden, looked at often; ended with the test. */
export async function aServer(
  onEnd: (undo: () => Promise<void>) => void,
  differs: Partial<ServeOptions> & { files?: Readonly<Record<string, string>> } = {},
): Promise<Running> {
  const { files = { "weir.yaml": gardenText("Weir", "2027-06-12", "2027-06-26") }, ...options } =
    differs;
  const folder = await aFolder(onEnd);
  const stateDir = differs.stateDir ?? join(await aFolder(onEnd), "state");
  for (const [name, text] of Object.entries(files)) await writeFile(join(folder, name), text);
  const lines: string[] = [];
  const log = (line: string): void => void lines.push(line);
  const started = await serveGardens({
    gardens: [folder],
    source: testSource,
    stateDir,
    log,
    lookMs: 50,
    ...options,
  });
  if (!started.ok) throw new Error(started.problems.map(({ message }) => message).join("\n"));
  const server = started.value;
  onEnd(() => server.stop());
  await server.ready;
  const port = Number(new URL(server.origins[0] ?? "").port);
  return { server, port, lines, folder, stateDir };
}

export interface Got {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

const agent = new Agent({ keepAlive: false });

export function get(
  port: number,
  path: string,
  headers: Readonly<Record<string, string | string[]>> = {},
  method = "GET",
  body: string | Buffer = "",
): Promise<Got> {
  return new Promise((resolve, reject) => {
    const options = { host: "127.0.0.1", port, path, headers, method, agent };
    const sent = request(options, (response) => {
      const parts: Buffer[] = [];
      response.on("data", (part: Buffer) => parts.push(part));
      response.on("end", () => {
        resolve({
          status: response.statusCode ?? 0,
          headers: response.headers,
          body: Buffer.concat(parts),
        });
      });
      response.on("error", reject);
    });
    sent.on("error", reject);
    sent.end(body);
  });
}

/**
 * Sends bytes and gives all that comes back until the other side ends or cuts the connection.
 * `halfOpen` keeps our side open, as a client does that just waits.
 */
export function exchange(
  port: number,
  bytes: string | Uint8Array,
  { halfOpen = false } = {},
): Promise<string> {
  return new Promise((resolve) => {
    let answer = "";
    const socket = connect({ port, host: "127.0.0.1", allowHalfOpen: true });
    const done = (): void => {
      socket.destroy();
      resolve(answer);
    };
    socket.on("data", (data) => (answer += data.toString("latin1")));
    socket.on("end", done);
    socket.on("error", done);
    socket.on("close", done);
    socket.on("connect", () => {
      if (halfOpen) socket.write(bytes);
      else socket.end(bytes);
    });
  });
}

/** Fulfilled when the condition holds, however long that takes. */
export async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setImmediate(resolve));
}
