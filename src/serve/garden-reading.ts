/** What is made of a garden file for those who show it: plain values, so that a thread can make them. */
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import type { Day } from "../dates.js";
import type { Problem } from "../problem.js";
import type { Plan } from "../season/index.js";
import { given } from "../values.js";
import { type AskedDay, askedDays, nextAsks, noRound, pageWritten } from "../words/index.js";
import type { AsOf, FileRead, GardenSource, OwnCalendar } from "./garden-source.js";
import { subscribeLinks, type SubscribeLinks } from "./links.js";
import { textOf } from "./publish-manifest.js";
import { qrSvg } from "./qr.js";
import { contentHash, packed, type Packed } from "./representation.js";
import { withPolicy } from "./security-headers.js";
import { type Now, todayIn } from "./today.js";

/** A garden for the server: bytes compressed, as they are kept. */
export type Reading = { readonly reads: readonly FileRead[] } & (
  | {
      readonly ok: true;
      readonly calendar: Packed & { readonly text: string };
      readonly plan: PackedPlan;
      readonly ownCalendar?: OwnCalendar;
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }
);

export interface PackedPlan extends Packed {
  readonly title: string;
  readonly timezone: string;
  readonly index: PlanInIndex;
  readonly ticks?: Uint8Array;
}

/** What the index tells of a plan on any day of it. */
export interface PlanInIndex {
  readonly amounts: Plan["garden"]["amounts"];
  readonly asked: readonly AskedDay[];
  readonly done: string;
}

/** A garden for a folder of published files. */
export type Documents = { readonly reads: readonly FileRead[] } & (
  | {
      readonly ok: true;
      readonly title: string;
      readonly timezone: string;
      readonly today: Day;
      /** What it asks for next. */
      readonly asks: string;
      /** The page, then the calendar. */
      readonly files: readonly Document[];
      readonly ownCalendar?: OwnCalendar;
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }
);

export interface Document {
  /** In the published folder. */
  readonly name: string;
  readonly content: string;
  readonly hash: string;
  /** Of what stood there when the garden was read. */
  readonly before?: string;
}

export interface DocumentsAsk extends Now {
  readonly file: string;
  readonly dir: string;
  /** Under which it is published. */
  readonly name: string;
  /** Address at which `dir` will be found. */
  readonly url?: string;
}

export async function readingOf(
  file: string,
  asOf: AsOf,
  source: Pick<GardenSource, "load">,
): Promise<Reading> {
  const loaded = await source.load(file, asOf);
  if (!loaded.ok) return loaded;
  const { reads, plan, calendar, ownCalendar, ticks, notices } = loaded;
  const { name: title, timezone, amounts } = plan.garden;
  const index = { amounts, asked: askedDays(plan, plan.today), done: noRound(plan) };
  return {
    ...{ ok: true, reads, notices, calendar: { ...packed(calendar), text: calendar } },
    plan: {
      ...{ ...packed(JSON.stringify(plan)), title, timezone, index },
      ...(ticks === undefined ? {} : { ticks: gzipSync(JSON.stringify(ticks)) }),
    },
    ...given({ ownCalendar }),
  };
}

export async function documentsOf(
  { file, dir, name, url, ...now }: DocumentsAsk,
  source: GardenSource,
): Promise<Documents> {
  const [pageName, calendarName] = publishedNames(name);
  const [pageBefore, previous] = await Promise.all([
    textOf(join(dir, pageName)),
    textOf(join(dir, calendarName)),
  ]);
  const loaded = await source.load(file, {
    ...now,
    ...(previous === undefined ? {} : { previous, previousFile: join(dir, calendarName) }),
  });
  if (!loaded.ok) return loaded;
  const { reads, plan, calendar, ownCalendar, notices } = loaded;
  const { name: title, timezone, amounts } = plan.garden;
  const today = todayIn(timezone, now);
  const page = source.page(plan, { today, problems: [], subscribe: linksOf(name, url) });
  const [next] = askedDays(plan, today);
  const asks = next === undefined ? noRound(plan) : nextAsks(next, amounts, today);
  return {
    ...{ ok: true, reads, title, timezone, today, notices },
    asks: `${asks}. ${pageWritten(today, amounts)}.`,
    files: [
      documentOf(pageName, withPolicy(page), pageBefore),
      documentOf(calendarName, calendar, previous),
    ],
    ...given({ ownCalendar }),
  };
}

/** Of the page and the calendar. */
export function publishedNames(name: string): readonly [page: string, calendar: string] {
  return [`${name}.html`, `${name}.ics`];
}

function documentOf(name: string, content: string, before: string | undefined): Document {
  return {
    ...{ name, content, hash: contentHash(content) },
    ...given({ before: before === undefined ? undefined : contentHash(before) }),
  };
}

/** Beside the page where the address is not known: a relative link works on any host. */
function linksOf(name: string, url: string | undefined): SubscribeLinks {
  if (url === undefined) {
    const [page, calendar] = publishedNames(name);
    return { webcal: calendar, http: calendar, page };
  }
  const links = subscribeLinks(url.replace(/\/+$/, ""), name, ".html");
  return { ...links, qrSvg: qrSvg(links.page, "QR code of this page") };
}
