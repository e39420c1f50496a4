/** What a tick writes into a garden file as it is now. */
import type { Day } from "../dates.js";
import {
  type Garden,
  type LogEntry,
  type NewLogEntry,
  shortDay,
  totalOf,
} from "../garden/index.js";
import { batchNamed, knownBatches, stepEdits } from "../log/index.js";
import type { Published } from "../published/index.js";
import type { Outcome } from "../serve/index.js";
import { batchName } from "../stock/index.js";
import {
  entriesInWords,
  entriesOfTick,
  feedAsBed,
  isAsSeen,
  markOf,
  missedInWords,
  nameOfTicked,
  seenInWords,
  standingOf,
  stepInWords,
  type Tick,
  type Ticked,
} from "../ticks/index.js";
import { given } from "../values.js";
import { capital } from "../words/index.js";
import { farBeyond, mostPublishedMl } from "./far-beyond.js";
import { visits } from "./log-batch.js";
import { withBottles } from "./log-bottles.js";
import { spaced, stockMlOf } from "./log-options.js";
import { seenEdits } from "./log-seen.js";
import type { GardenNow, LogWish } from "./write-log.js";

/** A tick in the light of the file. */
export interface TickWish extends LogWish {
  /** What is written, in words. */
  readonly told: string;
  /** What comes of it where there is nothing to write. */
  readonly instead?: Instead;
}

type Instead = Exclude<Outcome, { readonly kind: "written" }>;

/** A tick on the day that it is of. */
export interface DatedTick {
  readonly tick: Tick;
  readonly on: Day;
}

/** @param published what the calendar has told */
export function tickWish(now: GardenNow, dated: DatedTick, published: Published): TickWish {
  const { what } = dated.tick;
  const { garden } = now;
  const lacking = whatIsLacking(what, now);
  if (lacking !== undefined) return refusedTick(lacking);
  const change = changeOf(now, dated, published);
  if (change === undefined)
    return refusedTick("the garden file knows nothing of it any more: open the page again");
  const standing = standingOf(garden, what, published);
  const name = capital(nameOfTicked(what, garden));
  const wanted = `${name}: ${change.wanted}`;
  const told = `${name}: ${standing.told ?? "the garden file says nothing of it any more"}`;
  const wish = { ...change, told: wanted };
  if (change.isSaid || (isAsSeen(dated.tick, standing) && change.edits.length === 0))
    return { ...wish, edits: [], instead: { kind: "already", told } };
  if (change.odd !== undefined) return refusedTick(change.odd);
  return isAsSeen(dated.tick, standing)
    ? wish
    : { ...wish, edits: [], instead: { kind: "conflict", now: told, wanted } };
}

export function refusedTick(why: string): TickWish {
  return { edits: [], told: "", instead: { kind: "refused", told: [why] } };
}

interface Change extends LogWish {
  /** Of the thing, in words. */
  readonly wanted: string;
  /** The file says exactly this. */
  readonly isSaid: boolean;
  /** Why it is not written without a question. */
  readonly odd?: string;
}

function changeOf(
  now: GardenNow,
  { tick, on }: DatedTick,
  published: Published,
): Change | undefined {
  const { garden } = now;
  const { what } = tick;
  switch (what.kind) {
    case "round":
      return roundChange(now, what, on, published);
    case "step":
      return stepChange(now, what, { on, isDayNamed: tick.on !== undefined }, published);
    default: {
      const { edits, saidOn } = seenEdits(what, on, garden);
      return { edits, isSaid: saidOn === on, wanted: seenInWords(on, garden) };
    }
  }
}

function roundChange(
  now: GardenNow,
  what: Ticked & { kind: "round" },
  on: Day,
  published: Published,
): Change | undefined {
  const { garden, written } = now;
  const known = knownBatches([{ published }], "poured", on);
  const { wanted, fresh } = entriesOfTick(garden, what, on, published);
  if (what.missed) {
    const edits = fresh.length === 0 ? [] : [{ kind: "add-to-log" as const, entries: fresh }];
    const isSaid = standingOf(garden, what, published).told === missedInWords;
    return { edits, entries: fresh, isSaid, wanted: missedInWords };
  }
  if (wanted.length === 0) return undefined;
  const asWritten = withBottles(
    now,
    wanted.map(({ entry }) => entry),
    on,
    known,
  ).entries;
  const held = new Set((written.log ?? []).map(markOf));
  const said = asWritten.map((entry, i) => ({
    bed: wanted[i]?.bed ?? "",
    entry: asRead(entry, now),
  }));
  const odd = oddAmount(said, what.beds, garden, published);
  const { unready, edits, entries } = withBottles(now, fresh, on, known);
  const dayIn = (day: Day): string => shortDay(day, garden.amounts);
  return {
    edits: fresh.length === 0 ? [] : edits,
    entries,
    isSaid: asWritten.every((entry) => held.has(markOf(entry))),
    wanted: entriesInWords(said, what.beds, garden),
    ...given({ odd }),
    remarks: unready.map(
      ({ id, notBefore }) =>
        `${capital(batchName(id))} cannot be bottled before ${dayIn(notBefore)}, so it is not written down as bottled on ${dayIn(on)}`,
    ),
  };
}

/** A bed that got far more than was ever told for it. */
function oddAmount(
  said: readonly { readonly bed: string; readonly entry: Pick<LogEntry, "stockMl" | "feed"> }[],
  beds: readonly string[],
  { amounts }: Garden,
  published: Published,
): string | undefined {
  for (const bed of beds) {
    const ml = totalOf(
      said.filter((one) => one.bed === bed).flatMap(({ entry }) => entry.stockMl ?? []),
    );
    const odd = farBeyond(ml, mostPublishedMl(published, bed), amounts);
    if (odd !== undefined)
      return `${bed}: ${odd}: check the amount and its unit; if it was really so much, write it with \`feedround log --so-much\`, or into the garden file`;
  }
  return undefined;
}

/** With its amount as the garden would read it. */
function asRead(entry: NewLogEntry, { garden: { amounts } }: GardenNow): Omit<LogEntry, "path"> {
  const { stock, ...rest } = entry;
  const stockMl = stock === undefined ? undefined : stockMlOf(stock, amounts);
  return { ...rest, ...given({ stockMl }) };
}

function stepChange(
  { garden, written }: GardenNow,
  { batch, step, volume: typed }: Ticked & { kind: "step" },
  when: { readonly on: Day; readonly isDayNamed: boolean },
  published: Published,
): Change | undefined {
  const known = knownBatches([{ published }], visits[step] ?? "made", when.on);
  const volume = typed === undefined ? undefined : spaced(typed);
  const done = { step, ...when, ...given({ volume }) };
  const named = batchNamed(batch, written, known);
  const change = stepEdits(batch, named, done, garden.amounts);
  if (change === undefined) return undefined;
  return {
    edits: change.edits,
    isSaid: change.edits.length === 0 && change.writtenOn === when.on,
    wanted: stepInWords(step, when.on, garden, step === "made" ? volume : undefined),
  };
}

/** A bed or planting of the page that is gone. */
function whatIsLacking(what: Ticked, { garden }: GardenNow): string | undefined {
  const again = "open the page again, and mark it there";
  if (what.kind === "round") {
    const known = [
      ...garden.beds.map(({ id }) => id),
      ...garden.feeds.map(({ name }) => feedAsBed(name)),
    ];
    const lost = what.beds.find((bed) => !known.includes(bed));
    return lost && `there is no bed or feed \`${lost}\` in the garden file any more: ${again}`;
  }
  if (what.kind === "step") return undefined;
  const plantings = garden.beds.flatMap((bed) => bed.plantings);
  return plantings.some(({ id }) => id === what.planting)
    ? undefined
    : `there is no planting \`${what.planting}\` in the garden file any more: ${again}`;
}
