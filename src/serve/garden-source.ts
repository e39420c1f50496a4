import { calendarText } from "../calendar/index.js";
import type { Day } from "../dates.js";
import { largestGardenBytes, namedFiles } from "../garden/index.js";
import { gardenPage } from "../outputs/index.js";
import type { Problem, Result } from "../problem.js";
import type { Plan } from "../season/index.js";
import type { TickSheet } from "../ticks/index.js";
import { given } from "../values.js";
import { bytesOf } from "./garden-text.js";
import type { SubscribeLinks } from "./links.js";
import { contentHash } from "./representation.js";
import { type Now, stampOf } from "./today.js";
import { dirname, resolve } from "node:path";

/** A file that a garden depends on, the garden's own among them. */
export interface FileRead {
  readonly path: string;
  /** Of what it held before it was read for the plan; none where it is not there, or is written too. */
  readonly hash?: string;
}

/** A garden file as it is now, or what is wrong with it. */
export type Loaded = { readonly reads: readonly FileRead[] } & (
  | {
      readonly ok: true;
      readonly plan: Plan;
      readonly calendar: string;
      /** The file that the garden names as its calendar: it is written, and is what the next plan goes on from. */
      readonly ownCalendar?: OwnCalendar;
      /** What can be marked, where gardens are written into. */
      readonly ticks?: TickSheet;
      /** For the terminal. */
      readonly notices: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] }
);

export interface PageView {
  /** In the garden's zone. */
  readonly today: Day;
  /** Absent where the address of the page is not known. */
  readonly subscribe?: SubscribeLinks;
  /** Of the garden file as it is now, when the plan is an earlier one. */
  readonly problems: readonly Problem[];
}

export interface OwnCalendar {
  readonly path: string;
  /** Absent where it is not there yet. */
  readonly bytes?: Uint8Array;
}

/** As of when a garden is planned, and what it follows. */
export interface AsOf extends Now {
  /** The calendar served or published before, for a garden that names none of its own. */
  readonly previous?: string;
  /** The file that holds it, where it is published: one that is damaged or another garden's is refused. */
  readonly previousFile?: string;
}

export interface PlannedGarden {
  readonly plan: Plan;
  /** The calendar that the plan goes on from. */
  readonly previous?: string;
  readonly ownCalendar?: OwnCalendar;
  readonly ticks?: TickSheet;
  readonly notices: readonly string[];
}

/** How gardens are read and shown: all that the server and the publisher need to know of them. */
export interface GardenSource {
  /** Trouble is a value; throws for bugs only. */
  readonly load: (file: string, asOf: AsOf) => Promise<Loaded>;
  /** A whole HTML page. */
  readonly page: (plan: Plan, view: PageView) => string;
}

export interface SourceParts {
  /** Reads and plans one garden file as of now; problems when it can't even be read, too. */
  readonly loadPlan: (file: string, asOf: AsOf) => Promise<Result<PlannedGarden>>;
  /** {@link gardenPage} unless given. */
  readonly page?: GardenSource["page"];
}

/** The calendar and page of a garden file from a way to plan it. */
export function gardenSource({ loadPlan, page = gardenPage }: SourceParts): GardenSource {
  return {
    page,
    load: async (file, asOf) => {
      const reads = await filesRead(file);
      const planned = await loadPlan(file, asOf);
      if (!planned.ok) return { ok: false, problems: planned.problems, reads };
      const { plan, ownCalendar, ticks, notices } = planned.value;
      const calendar = calendarOf(planned.value, asOf);
      const own = ownCalendar === undefined ? [] : [{ path: ownCalendar.path }];
      return {
        ok: true,
        ...{ plan, calendar, notices, reads: [...reads, ...own] },
        ...given({ ownCalendar, ticks }),
      };
    },
  };
}

function calendarOf({ plan, previous }: PlannedGarden, now: Now): string {
  const options = { stamp: stampOf(now), today: plan.today, for: "subscription" } as const;
  const calendar = calendarText(plan, { ...options, ...given({ previous }) });
  if (!calendar.ok) throw new Error("what the plan goes on from has been read without problems");
  return calendar.value;
}

/** The garden file and the files that are read with it, whether or not they are in order. */
async function filesRead(file: string): Promise<FileRead[]> {
  const bytes = await bytesOf(file);
  const isTooLarge = bytes === undefined || bytes.length > largestGardenBytes;
  const named = isTooLarge ? [] : namedFiles(bytes.toString());
  const paths = named.map((name) => resolve(dirname(file), name));
  const own = bytes === undefined ? { path: file } : { path: file, hash: contentHash(bytes) };
  return [own, ...(await Promise.all(paths.map(fileRead)))];
}

/** As it is now. */
export async function fileRead(path: string): Promise<FileRead> {
  const bytes = await bytesOf(path);
  return bytes === undefined ? { path } : { path, hash: contentHash(bytes) };
}

/** Whether a YAML file in a folder of gardens is rules for them: `rules` is a list, and no `beds`. */
export function isRuleFile(text: string): boolean {
  return /^rules:[ \t]*(?:\[|#|\r?$)/m.test(text) && !/^beds:/m.test(text);
}
