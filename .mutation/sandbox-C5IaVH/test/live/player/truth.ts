/**
 * What really happened in a played garden, worked out apart from the program: a round that was told
 * by its day was given as it was told, until the file says otherwise.
 */
// @ts-nocheck

import { addDays, type Day, daysBetween, within } from "../../../src/dates.js";
import type { Plan } from "../../../src/season/season-plan.js";
import type { EntryDraft, GardenDraft, PlantingDraft } from "./gardens.js";

/** A round as the grower read it in the plan behind the calendar. */
export interface ToldRound {
  readonly day: Day;
  readonly mixes: readonly ToldMix[];
}

export interface ToldMix {
  readonly bed: string;
  readonly route: string;
  readonly fed: readonly { readonly planting: string; readonly waterL: number }[];
  readonly pours: readonly Poured[];
}

export interface Poured {
  readonly batch?: string;
  readonly ml: number;
}

/** One planting's share of a told round. */
export interface ToldFeeding {
  readonly planting: string;
  readonly route: string;
  readonly bed: string;
  readonly day: Day;
  readonly waterL: number;
  readonly pours: readonly Poured[];
}

export interface Fed {
  readonly planting: string;
  /** Absent where the entry names none and was one more. */
  readonly route?: string;
  readonly day: Day;
  readonly pours: readonly Poured[];
  /** Someone wrote it down. */
  readonly isWritten: boolean;
}

export interface Truth {
  readonly fed: readonly Fed[];
  /** Told up to today, and nobody has said anything of it. */
  readonly silent: readonly ToldFeeding[];
  /** Told, and an entry speaks of it. */
  readonly spokenOf: readonly ToldFeeding[];
  /** Told up to today, and the file says that it cannot have been. */
  readonly prevented: readonly ToldFeeding[];
}

/** The told rounds once a plan has been published: what is past stays, and what was given before its day. */
export function toldWith(
  told: readonly ToldRound[],
  plan: Plan,
  spokenOf: readonly ToldFeeding[],
  today: Day,
): ToldRound[] {
  const ahead = plan.rounds
    .filter(({ day }) => day >= today)
    .map(({ day, beds }): ToldRound => ({
      day,
      mixes: beds.flatMap(({ bed, mixes }) =>
        mixes
          .filter((mix) => !mix.given)
          .map(({ route, feedings, pours = [] }) => ({ bed, route, fed: feedings, pours })),
      ),
    }));
  const open = new Set(
    ahead
      .filter(({ day }) => day === today)
      .flatMap(({ mixes }) => mixes.flatMap(({ route, fed }) => fed.map((f) => lineOf(f, route)))),
  );
  const stays = (told.find(({ day }) => day === today)?.mixes ?? []).filter(
    ({ route, fed }) => !fed.some((f) => open.has(lineOf(f, route))),
  );
  const early = spokenOf
    .filter(({ day }) => day > today)
    .map(({ day, bed, route, pours, ...fed }): ToldRound => {
      return { day, mixes: [{ bed, route, fed: [fed], pours }] };
    });
  return [
    ...told.filter(({ day }) => day < today),
    { day: today, mixes: stays },
    ...early,
    ...ahead,
  ].filter(({ mixes }) => mixes.length > 0);
}

export function renamedIn(told: readonly ToldRound[], from: string, to: string): ToldRound[] {
  return told.map(({ day, mixes }) => ({
    day,
    mixes: mixes.map((mix) => ({
      ...mix,
      fed: mix.fed.map((f) => (f.planting === from ? { ...f, planting: to } : f)),
    })),
  }));
}

export function lineOf({ planting }: { readonly planting: string }, route: string): string {
  return `${planting}/${route}`;
}

export function feedingsTold(told: readonly ToldRound[]): ToldFeeding[] {
  return told.flatMap(({ day, mixes }) =>
    mixes.flatMap(({ bed, route, fed, pours }) => {
      const totalL = fed.reduce((sum, { waterL }) => sum + waterL, 0);
      return fed.map(({ planting, waterL }) => ({
        ...{ planting, route, bed, day, waterL },
        pours: pours.map((pour) => ({ ...pour, ml: (pour.ml * waterL) / totalL })),
      }));
    }),
  );
}

/**
 * @param gapOf the shortest gap between two feedings of a line, days
 * @param canPour whether a bottle can have been poured from on a day
 */
export function truthOn(
  garden: GardenDraft,
  told: readonly ToldRound[],
  today: Day,
  gapOf: (planting: string, route: string) => number,
  canPour: (batch: string, day: Day) => boolean,
): Truth {
  const lines = new Map<string, ToldFeeding[]>();
  for (const feeding of feedingsTold(told)) {
    const line = lineOf(feeding, feeding.route);
    lines.set(line, [...(lines.get(line) ?? []), feeding]);
  }
  const entries = (garden.log ?? []).filter(({ feed, on }) => feed === undefined && on <= today);
  const claims = [...lines.values()].flatMap((feedings) =>
    claimsOn(feedings, entries, garden, gapOf),
  );
  const spoken = new Set(claims.map(({ feeding }) => feeding));
  const past = [...lines.values()].flat().filter(({ day }) => day <= today);
  const unspoken = past.filter((feeding) => !spoken.has(feeding));
  const isPrevented = (feeding: ToldFeeding): boolean =>
    preventedBy(garden, feeding) ||
    !feeding.pours.some(({ batch }) => batch !== undefined && canPour(batch, feeding.day));
  const silent = unspoken.filter((feeding) => !isPrevented(feeding));
  return {
    fed: [
      ...silent
        .filter(({ day }) => day < today && garden.unlogged !== "not-given")
        .map(({ planting, route, day, pours }) => ({
          ...{ planting, route, day, pours },
          isWritten: false,
        })),
      ...entries.flatMap((entry) => fedBy(entry, claims)),
    ],
    silent,
    spokenOf: [...spoken],
    prevented: unspoken.filter(isPrevented),
  };
}

interface Claim {
  readonly entry: EntryDraft;
  readonly feeding: ToldFeeding;
}

function claimsOn(
  feedings: readonly ToldFeeding[],
  entries: readonly EntryDraft[],
  garden: GardenDraft,
  gapOf: (planting: string, route: string) => number,
): Claim[] {
  const [{ planting, route, bed: toldBed }] = feedings as [ToldFeeding];
  const bed = bedOf(garden, planting) ?? toldBed;
  const own = entries.filter(
    (entry) =>
      (entry.route === undefined || entry.route === route) &&
      (entry.planting === undefined || entry.planting === planting) &&
      (entry.bed === undefined || entry.bed === bed),
  );
  const keys = [...new Set(own.map(({ on, round }) => `${on} ${round ?? ""}`))];
  const open = new Map(feedings.map((feeding) => [feeding.day, feeding]));
  const claims: Claim[] = [];
  const claim = (key: string, day: Day): void => {
    const feeding = open.get(day);
    if (feeding === undefined) return;
    open.delete(day);
    for (const entry of own)
      if (`${entry.on} ${entry.round ?? ""}` === key) claims.push({ entry, feeding });
  };
  const named = keys.filter((key) => key.slice(11) !== "");
  for (const key of named) claim(key, key.slice(11) as Day);
  const free = new Set(keys.filter((key) => key.slice(11) === ""));
  const far = gapOf(planting, route) / 2;
  for (let distance = 0; distance <= far; distance++)
    for (const key of [...free])
      for (const day of [
        addDays(key.slice(0, 10) as Day, -distance),
        addDays(key.slice(0, 10) as Day, distance),
      ])
        if (free.has(key) && open.has(day)) {
          claim(key, day);
          free.delete(key);
        }
  return claims;
}

function fedBy(entry: EntryDraft, claims: readonly Claim[]): Fed[] {
  const own = claims.filter((claim) => claim.entry === entry);
  if (entry.missed) return [];
  const ml = entry.stock === undefined ? undefined : Number.parseFloat(entry.stock);
  const batch = entry.batch === undefined ? {} : { batch: entry.batch };
  if (own.length === 0) {
    const { planting, route, on: day } = entry;
    if (planting === undefined) return [];
    const pours = ml === undefined ? [] : [{ ...batch, ml }];
    return [{ planting, ...(route === undefined ? {} : { route }), day, pours, isWritten: true }];
  }
  const totalL = own.reduce((sum, { feeding }) => sum + feeding.waterL, 0);
  return own.map(({ feeding: { planting, route, waterL, pours } }) => {
    const toldMl = pours.reduce((sum, pour) => sum + pour.ml, 0);
    const ownMl = ml === undefined ? toldMl : (ml * waterL) / totalL;
    const really =
      entry.batch !== undefined || toldMl === 0
        ? [{ ...batch, ml: ownMl }]
        : pours.map((pour) => ({ ...pour, ml: (pour.ml * ownMl) / toldMl }));
    return { planting, route, day: entry.on, pours: really, isWritten: true };
  });
}

export function plantingsOf(garden: GardenDraft): PlantingDraft[] {
  return garden.beds.flatMap(({ plantings }) => plantings);
}

function bedOf(garden: GardenDraft, planting: string): string | undefined {
  return garden.beds.find(({ plantings }) => plantings.some(({ id }) => id === planting))?.id;
}

function preventedBy(garden: GardenDraft, { planting, day }: ToldFeeding): boolean {
  const one = plantingsOf(garden).find(({ id }) => id === planting);
  return (
    (garden.feeding?.away ?? []).some((span) => within(day, span)) ||
    (one?.removed !== undefined && one.removed < day) ||
    (one?.transplanted !== undefined && one.transplanted > day)
  );
}

/** The shortest gap of any rule that feeds a planting that way; infinitely short where none does. */
export function gapsOf(
  plan: Plan | undefined,
  garden: GardenDraft,
): (planting: string, route: string) => number {
  return (id, route) => {
    const rules = plan?.plantings.find((planting) => planting.id === id)?.rules ?? [];
    const wish = Number.parseInt(
      plantingsOf(garden).find((planting) => planting.id === id)?.interval ?? "",
      10,
    );
    const gaps = (plan?.rules ?? [])
      .filter((rule) => rules.includes(rule.id) && rule.route === route)
      .map(({ interval: { shortestDays } }) =>
        Number.isNaN(wish) ? shortestDays : Math.max(shortestDays, wish - 3),
      );
    return gaps.length === 0 ? 0 : Math.min(...gaps);
  };
}

export function daysApart(a: Day, b: Day): number {
  return Math.abs(daysBetween(a, b));
}
