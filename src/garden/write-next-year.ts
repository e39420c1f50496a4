/** The text of next year's garden file: last year's with as little changed in it as can be. */
import { isMap, isScalar, parseDocument } from "yaml";
import type { Bed, BedCover, GardenFile, Planting } from "../compiled/garden-file.js";
import type { Problem, Result } from "../problem.js";
import {
  bottleKeys,
  type CarriedOver,
  isEmptied,
  isKept,
  later,
  namesGone,
  nextYearOf,
  saysAwayAlone,
  staysOn,
} from "./next-year.js";
import { lineFeeds, withLineEndsOf } from "./line-ends.js";
import { readYaml } from "./read.js";
import {
  bracketsOf,
  commented,
  commentedItems,
  emptied,
  entries,
  inner,
  type Place,
  withKeys,
  withoutItems,
  withoutKey,
} from "./place-edits.js";
import { appliedOutermost } from "./text-edits.js";
import { pairOf, type TextEdit } from "./write-text.js";

/**
 * Dates of season, feeds and perennials a year later, bottles with what is left in them, log and
 * signs empty; other plantings and time away are comments to choose from. Every other byte stays.
 *
 * @param text a valid garden file without a byte order mark
 * @returns the new text, or `next-year-layout` where the file is laid out so that it cannot be made
 *   by such changes (aliases, tags)
 */
export function nextYearText(text: string, file: string, carried: CarriedOver): Result<string> {
  const before = readYaml(text, file);
  if (!before.ok) return before;
  const value = before.value.value as GardenFile;
  const edits = editsFor(lineFeeds(text), value, carried);
  const next = appliedOutermost(text, withLineEndsOf(text, edits));
  // The proof of the edits: read again, the file says what it is to say.
  const after = readYaml(next, file);
  if (after.ok && JSON.stringify(after.value.value) === JSON.stringify(nextYearOf(value, carried)))
    return { ok: true, value: next };
  const problem: Problem = {
    code: "next-year-layout",
    file,
    at: before.value.locate({ path: [] }),
    message: "the file is written in a way that next year's cannot be made from it",
    mend: "write out what stands behind anchors, aliases and tags, or copy the file and mend its dates yourself",
  };
  return { ok: false, problems: [problem] };
}

function editsFor(text: string, value: GardenFile, carried: CarriedOver): TextEdit[] {
  const map = parseDocument(text, { keepSourceTokens: true, schema: "core" }).contents;
  if (!isMap(map)) return [];
  const root: Place<GardenFile> = { text, map, value, brackets: bracketsOf(map, undefined) };
  const stock = inner(root, "stock");
  return [
    ...inner(root, "season").flatMap((season) => laterDates(season, "from", "to")),
    ...inner(root, "feeding").flatMap((feeding) => {
      const dates = entries(feeding, "away").flatMap((away) => laterDates(away, "from", "to"));
      return saysAwayAlone(feeding.value)
        ? commented(root, "feeding", dates)
        : commented(feeding, "away", dates);
    }),
    ...stock.flatMap((place) => withoutItems(place, "batches", (b) => isEmptied(b, carried))),
    ...stock
      .flatMap((place) => entries(place, "batches"))
      .filter((batch) => !isEmptied(batch.value, carried))
      .flatMap((batch) => withKeys(batch, bottleKeys(batch.value, carried))),
    ...entries(root, "beds").flatMap((bed) => [
      ...coverEdits(bed, value.season),
      ...plantingEdits(bed, carried),
    ]),
    ...commentedItems(
      root,
      "feeds",
      (feed) => namesGone(feed, value.beds, carried),
      entries(root, "feeds").flatMap((feed) => laterDates(feed, "from", "to")),
    ),
    ...emptied(root, "log"),
    ...emptied(root, "signs"),
  ];
}

function coverEdits(bed: Place<Bed>, season: GardenFile["season"]): TextEdit[] {
  // A cover of one word has no days.
  return (inner(bed, "cover") as Place<BedCover>[])
    .filter(({ value }) => !staysOn(value, season))
    .flatMap((cover) => laterDates(cover, "from", "to"));
}

function plantingEdits(bed: Place<Bed>, carried: CarriedOver): TextEdit[] {
  const isGone = (planting: Planting): boolean => !isKept(planting, carried);
  const moved = entries(bed, "plantings").flatMap((planting) => {
    const { value } = planting;
    if (carried.perennials.has(value.id))
      return [...laterDates(planting, "bloom", "picked_until"), ...withoutKey(planting, "seen")];
    return isGone(value) ? laterLife(planting) : [];
  });
  return commentedItems(bed, "plantings", isGone, moved);
}

/** Of a planting to choose again: what was seen of the last one says nothing of it, unless it is its only date. */
function laterLife(planting: Place<Planting>): TextEdit[] {
  const { sown, transplanted } = planting.value;
  return [
    ...laterDates(planting, "sown", "transplanted", "bloom", "removed", "picked_until"),
    ...(sown === undefined && transplanted === undefined
      ? entries(planting, "seen").flatMap((seen) => laterDates(seen, "on"))
      : withoutKey(planting, "seen")),
  ];
}

/** The dates under these keys, a year later, in the quotes they have. */
function laterDates<T>({ text, map, value }: Place<T>, ...keys: (keyof T & string)[]): TextEdit[] {
  return keys.flatMap((key) => {
    const date = value[key];
    const node = pairOf(map, key)?.value;
    if (typeof date !== "string" || !isScalar(node)) return [];
    const at = text.indexOf(date, node.range[0]);
    return [{ at, cut: date.length, text: later(date) }];
  });
}
