/** A server that writes into the small garden files of these tests, and forms for it. */
// @ts-nocheck

import { createHash } from "node:crypto";
import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { day } from "../../src/dates.js";
import type { FormOutcome } from "../../src/outputs/tick/tick-view.js";
import type { GardenWriter, Outcome } from "../../src/serve/garden-writer.js";
import type { ServeOptions } from "../../src/serve/serve.js";
import type { WritePages, Writing } from "../../src/serve/write-context.js";
import { newFormId } from "../../src/serve/written-once.js";
import { tickFields } from "../../src/ticks/form.js";
import { aServer, type Got, get, type Running } from "./a-server.js";

export const hashOf = (text: string): string => createHash("sha256").update(text).digest("hex");

/** A round that is marked stands as one more day in the file; `seen` other than `n` is of another state. */
export const testWriter: GardenWriter = {
  tick: async (file, { seen, what }): Promise<Outcome> => {
    if (what.kind !== "round") return { kind: "refused", told: ["rounds alone"] };
    const text = await readFile(file, "utf8");
    const told = `given ${what.day}`;
    if (text.includes(what.day)) return { kind: "already", told };
    if (seen !== "n") return { kind: "conflict", now: text.trim(), wanted: told };
    await writeFile(file, `${text.trimEnd()} ${what.day}\n`);
    return { kind: "written", told, undo: [{ kind: "unlist-batch", id: what.day }] };
  },
  takeBack: async (file, undo): Promise<Outcome> => {
    const [edit] = undo;
    const text = await readFile(file, "utf8");
    if (edit?.kind !== "unlist-batch" || !text.includes(edit.id))
      return { kind: "refused", told: ["it has changed"] };
    await writeFile(file, text.replace(` ${edit.id}`, ""));
    return { kind: "written", told: `taken back ${edit.id}`, undo: [] };
  },
  save: async (file, { text, openedHash }) => {
    const now = await readFile(file, "utf8");
    if (hashOf(now) !== openedHash) return { kind: "conflict", text: now, hash: hashOf(now) };
    await writeFile(file, text);
    return { kind: "saved", hash: hashOf(text) };
  },
};

/** The page tells what it was given. */
const pages: WritePages = {
  tickPage: (sheet, view) => {
    const told: Told = { days: sheet.rounds.map((round) => round.day), ...view };
    return `<!doctype html><style>p{color:#123}</style><script>1</script><pre>${JSON.stringify(told)}</pre>`;
  },
  tickIndex: (entries) =>
    `<style>a{}</style>${entries.map(({ address }) => `<a href="${address}">`).join("")}`,
  serviceWorker: "self.onfetch = null;",
  webManifest: "{}",
};

export interface Writable extends Running {
  readonly file: string;
  readonly secret: string;
  /** `/<secret>` */
  readonly base: string;
  readonly origin: string;
  readonly text: () => Promise<string>;
  /** A form as a browser sends it from the garden's page. */
  readonly send: (
    body: string | Buffer,
    headers?: Readonly<Record<string, string | string[]>>,
    path?: string,
  ) => Promise<Got>;
  /** What the page tells. */
  readonly page: (query?: string) => Promise<Told>;
}

export interface Told {
  readonly days: readonly string[];
  readonly today: string;
  readonly outcome?: FormOutcome;
  readonly lately: readonly { form: string; told: string; canTakeBack: boolean }[];
  readonly mayWorkOffline: boolean;
  readonly filePage?: string;
}

export async function aWritableServer(
  onEnd: (undo: () => Promise<void>) => void,
  {
    writing,
    ...differs
  }: Omit<Partial<ServeOptions>, "writing"> & { writing?: Partial<Writing> } = {},
): Promise<Writable> {
  const running = await aServer(onEnd, {
    writing: { writer: testWriter, pages, ...writing },
    ...differs,
  });
  const { port, folder, server, stateDir } = running;
  const secret = (await readFile(join(stateDir, "write-secret"), "utf8")).trim();
  if (server.writeLink === undefined) throw new Error("there is no link to write");
  const file = join(folder, "weir.yaml");
  const base = `/${secret}`;
  const origin = `http://127.0.0.1:${port}`;
  return {
    ...{ ...running, file, secret, base, origin },
    text: () => readFile(file, "utf8"),
    send: (body, headers = {}, path = `${base}/weir`) =>
      get(port, path, { ...browser(origin), ...headers }, "POST", body),
    page: async (query = "") => {
      const { body } = await get(port, `${base}/weir${query}`);
      return JSON.parse(/<pre>(.*)<\/pre>/.exec(body.toString())?.[1] ?? "{}") as Told;
    },
  };
}

function browser(origin: string): Record<string, string> {
  return {
    "content-type": "application/x-www-form-urlencoded",
    origin,
    "sec-fetch-site": "same-origin",
  };
}

/** The form that says a round was given. */
export function roundForm(
  on: string,
  { id = newFormId(), seen = "n" }: { id?: string; seen?: string } = {},
): string {
  const entries = [{ bed: "bed-1", stock: "30 mL" }];
  const what = { kind: "round", day: day(on), beds: ["bed-1"], entries } as const;
  return encoded(tickFields({ id, seen, what }));
}

export function undoForm(of: string, id = newFormId()): string {
  return encoded([
    ["form", id],
    ["kind", "undo"],
    ["of", of],
  ]);
}

export function encoded(fields: readonly (readonly [string, string])[]): string {
  return new URLSearchParams(
    fields.map(([name, value]): [string, string] => [name, value]),
  ).toString();
}
