/** A tick as the fields of a form, and back. What comes in a form is anybody's: each field is checked. */
// @ts-nocheck

import { stageNames } from "../crops/index.js";
import { parseDay } from "../dates.js";
import { batchStepKeys, routes } from "../garden/index.js";
import type { Result } from "../problem.js";
import { given } from "../values.js";
import {
  among,
  type Fields,
  type FormProblem,
  formReader,
  type FormReader,
  matching,
  type Read,
  text,
} from "./form-reader.js";
import type { Tick, Ticked, TickedEntry } from "./tick.js";

/** What a form asks for. */
export type Asked =
  | { readonly kind: "tick"; readonly tick: Tick }
  /** Take back what the form of that id has written. */
  | { readonly kind: "undo"; readonly id: string; readonly of: string };

/** The fields that stand in a form as the page is made; buttons and what is typed come besides. */
export function tickFields(tick: Omit<Tick, "tappedMs">): Fields {
  const { id, seen, on, what } = tick;
  return [
    ["form", id],
    ["seen", seen],
    ...(on === undefined ? [] : [["on", on] as const]),
    ["kind", what.kind],
    ...fieldsOf(what),
  ];
}

function fieldsOf(what: Ticked): Fields {
  switch (what.kind) {
    case "round":
      return [
        ["day", what.day],
        ...what.beds.map((bed) => ["bed", bed] as const),
        ...(what.missed ? [["missed", "1"] as const] : []),
        ...what.entries.map((entry) => ["entry", JSON.stringify(entry)] as const),
      ];
    case "step":
      return [
        ["batch", what.batch],
        ["step", what.step],
        ...(what.volume === undefined ? [] : [["volume", what.volume] as const]),
      ];
    case "sign":
      return [
        ["planting", what.planting],
        ["sign", what.sign],
      ];
    case "stage":
      return [
        ["planting", what.planting],
        ["stage", what.stage],
      ];
  }
}

/**
 * The fields of a form -> what it asks for. `stock-<n>` and `batch-<n>` go over the n-th entry, counted
 * from 0; an amount of 0, or none, is of a planting that was not given. Whether such beds, batches and
 * plantings are there is for who writes to find out.
 *
 * @returns problems where it is no form of ours: a field that is not known, comes twice, is far too
 *   long or reads otherwise than it must
 */
export function readTick(fields: Fields): Result<Asked, FormProblem> {
  const form = formReader(fields);
  const asked = askedOf(form);
  const problems = form.done();
  // Whatever is missing has been told.
  return asked === undefined || problems.length > 0
    ? { ok: false, problems }
    : { ok: true, value: asked };
}

const kinds = ["round", "step", "sign", "stage", "undo"] as const;
const formId = /^[A-Za-z0-9_-]{22}$/;

function askedOf(form: FormReader): Asked | undefined {
  const id = form.needed("form", matching(formId));
  const kind = form.needed("kind", among(kinds));
  if (kind === "undo") {
    const of = form.needed("of", matching(formId));
    return id === undefined || of === undefined ? undefined : { kind, id, of };
  }
  const seen = form.needed("seen", matching(/^[\w~.-]{1,9999}$/));
  const tapped = form.optional("tapped", matching(/^\d{1,15}$/));
  const on = form.optional("on", parseDay);
  const what = kind && tickedOf(form, kind);
  if (id === undefined || seen === undefined || what === undefined) return undefined;
  const tappedMs = tapped === undefined ? undefined : Number(tapped);
  return { kind: "tick", tick: { id, seen, ...given({ tappedMs, on }), what } };
}

function tickedOf(form: FormReader, kind: Ticked["kind"]): Ticked | undefined {
  switch (kind) {
    case "round":
      return roundOf(form);
    case "step": {
      const batch = form.needed("batch", text(64));
      const step = form.needed("step", among(batchStepKeys));
      const volume = form.optional("volume", text(40));
      if (batch === undefined || step === undefined) return undefined;
      return { kind, batch, step, ...given({ volume: volume && withPoint(volume) }) };
    }
    case "sign": {
      const planting = form.needed("planting", text(64));
      const sign = form.needed("sign", matching(/^[a-z-]{1,64}$/));
      return planting === undefined || sign === undefined ? undefined : { kind, planting, sign };
    }
    case "stage": {
      const planting = form.needed("planting", text(64));
      const stage = form.needed("stage", among(stageNames));
      return planting === undefined || stage === undefined ? undefined : { kind, planting, stage };
    }
  }
}

function roundOf(form: FormReader): Ticked | undefined {
  const day = form.needed("day", parseDay);
  const beds = form.all("bed", text(mostFeedName));
  const missed = form.optional("missed", matching(/^1$/));
  const planned = form.all("entry", entryOf);
  const entries = otherwise(
    planned.map((entry, n) => ({
      entry,
      stock: form.typed(`stock-${n}`, text(40)),
      batch: form.typed(`batch-${n}`, text(64)),
    })),
  );
  if (beds.length === 0)
    form.wrong(
      "no bed is marked",
      "mark the beds that you fed, or did not feed, and send it again",
    );
  else if (missed === undefined && entries.length === 0)
    form.wrong("nothing is said of the beds", "open the page again, and mark the round there");
  if (day === undefined) return undefined;
  return missed === undefined
    ? { kind: "round", day, beds, entries }
    : { kind: "round", day, beds, missed: true, entries: [] };
}

interface Typed {
  readonly entry: TickedEntry;
  /** Absent where the form has no such field, empty where nothing stands in it. */
  readonly stock?: string | undefined;
  readonly batch?: string | undefined;
}

/** Entries with what was typed over them; who was given nothing was missed. */
function otherwise(typed: readonly Typed[]): TickedEntry[] {
  const changed = typed.map(({ entry, stock, batch }) => {
    const { batch: planned, ...rest } = entry;
    const poured = batch === undefined ? planned : batch || undefined;
    const isGiven = stock === undefined || !isNothing(stock);
    const amount = isGiven && stock ? { stock: inUnitOf(entry, stock) } : {};
    return { entry: { ...rest, ...amount, ...given({ batch: poured }) }, isGiven };
  });
  const targetOf = ({ planting, bed, route, feed }: TickedEntry): TickedEntry =>
    given({ planting, bed, route, feed });
  const fed = new Set(
    changed.filter((one) => one.isGiven).map(({ entry }) => JSON.stringify(targetOf(entry))),
  );
  return changed.flatMap(({ entry, isGiven }) => {
    if (isGiven) return [entry];
    const target = targetOf(entry);
    if (fed.has(JSON.stringify(target))) return [];
    fed.add(JSON.stringify(target));
    return [{ ...target, missed: true }];
  });
}

/** Left empty, or zero of some unit; a word is no amount, and is told so when the garden is read. */
function isNothing(amount: string): boolean {
  return /^(?:0+(?:[.,]0*)?\s*[A-Za-z]*)?$/.test(amount.trim());
}

/** A bare number is in the unit that stood there. */
function inUnitOf({ stock = "mL" }: TickedEntry, typed: string): string {
  const amount = withPoint(typed);
  const unit = /[A-Za-z].*$/.exec(stock)?.[0] ?? "mL";
  return /^[\d\s./]+$/.test(amount) ? `${amount} ${unit}` : amount;
}

/** `1,5 L` -> `1.5 L`: as telephones of many countries have it. */
function withPoint(typed: string): string {
  return typed.trim().replace(/^(\d+),(\d{1,2})(?!\d|,)/, "$1.$2");
}

/** `feed:` and the name of a feed, which is a line of text. */
const mostFeedName = 205;

const entryKeys: Readonly<Record<keyof TickedEntry, Read<unknown>>> = {
  planting: text(64),
  bed: text(64),
  stock: text(40),
  batch: text(64),
  feed: text(200),
  route: among(routes),
  missed: () => undefined,
};

/** As it stood in the page: an object with some of the keys of a log entry, the days left out. */
function entryOf(json: string): TickedEntry | undefined {
  const value = parsed(json);
  if (typeof value !== "object" || value === null || Array.isArray(value)) return undefined;
  const isRight = Object.entries(value).every(([key, part]: [string, unknown]) => {
    if (key === "missed") return part === true;
    if (!Object.hasOwn(entryKeys, key) || typeof part !== "string") return false;
    return entryKeys[key as keyof TickedEntry](part) !== undefined;
  });
  return isRight ? value : undefined;
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
