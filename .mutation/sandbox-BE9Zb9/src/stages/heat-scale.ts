/** Where the stages of a crop begin on a scale of degree days. */
// @ts-nocheck

import type {
  CourseStage,
  Crop,
  CropWarmth,
  RowSums,
  StageLengths,
  StageSum,
} from "../crops/index.js";
import { given } from "../values.js";
import { offsetDays, periods } from "./lengths.js";

export interface HeatScale {
  /** What happens at 0 degree days. */
  readonly from: StageSum["from"];
  /** For each stage of the crop's course; undefined where warmth says nothing of it. */
  readonly marks: readonly (HeatMark | undefined)[];
}

/** Degree days from the beginning of the scale to the first day of a stage. */
export interface HeatMark {
  readonly degreeDays: number;
  readonly least: number;
  readonly most: number;
  readonly dayLengthH?: number;
  /** Who says so. */
  readonly sources: readonly string[];
}

/**
 * Published sums fix their stages. Between two of them, and after the last, stages follow the degree
 * days of the growth periods; a crop without published sums has those alone. Sums from sowing speak of
 * the whole life; before the first of other sums there is no mark.
 *
 * @param scale how much longer or shorter this variety's life is than the published lengths
 * @param rowBandShare how far off a table's row may be at least, as a share of it
 */
export function heatScale(
  crop: Crop,
  warmth: CropWarmth,
  lengths: StageLengths,
  scale: number,
  rowBandShare: number,
): HeatScale {
  const { stages } = crop.course;
  const row = warmth.rows.find(({ row: id }) => id === lengths.id) ?? warmth.rows[0];
  const along = stages.map((stage) =>
    row ? rowDegreeDays(stage, row) : offsetDays(stage, lengths),
  );
  const from =
    warmth.sums[0]?.from ?? (crop.countedFrom === "transplanting" ? "transplanting" : "sowing");
  const fixed = fixedMarks(stages, warmth.sums, row, from);
  const marks = stages.map((_, i) => {
    const before = fixed.findLast(({ index }) => index <= i);
    const after = fixed.find(({ index }) => index > i);
    if (before === undefined || before.index === i) return before?.mark;
    const onward = (along[i] ?? 0) - (along[before.index] ?? 0);
    if (after !== undefined)
      return between(
        before.mark,
        after.mark,
        onward / ((along[after.index] ?? 0) - (along[before.index] ?? 0)),
      );
    return row && further(before.mark, onward, row, rowBandShare);
  });
  return { from, marks: marks.map((mark) => mark && scaled(mark, scale)) };
}

interface FixedMark {
  readonly index: number;
  readonly mark: HeatMark;
}

function fixedMarks(
  stages: readonly CourseStage[],
  sums: readonly StageSum[],
  row: RowSums | undefined,
  from: StageSum["from"],
): FixedMark[] {
  const zero = { degreeDays: 0, least: 0, most: 0 };
  if (sums.length === 0)
    return row === undefined ? [] : [{ index: 0, mark: { ...zero, sources: [] } }];
  const index = (name: string): number => stages.findIndex(({ stage }) => stage === name);
  const published = sums.map(
    ({ stage, degreeDays, least, most, dayLengthH, source }): FixedMark => ({
      index: index(stage),
      mark: { degreeDays, least, most, sources: [source], ...given({ dayLengthH }) },
    }),
  );
  const start = from === "sowing" ? 0 : index(from);
  return [...(start < 0 ? [] : [{ index: start, mark: { ...zero, sources: [] } }]), ...published];
}

function rowDegreeDays({ period, share }: CourseStage, row: RowSums): number {
  const sums = periods.map((name) => row[name]);
  const index = periods.indexOf(period);
  return sums.slice(0, index).reduce((sum, part) => sum + part, 0) + share * (sums[index] ?? 0);
}

function between(a: HeatMark, b: HeatMark, share: number): HeatMark {
  const part = (key: "degreeDays" | "least" | "most"): number => a[key] + share * (b[key] - a[key]);
  return {
    degreeDays: part("degreeDays"),
    least: part("least"),
    most: part("most"),
    sources: b.sources,
  };
}

/** Rows of one crop differ in their totals: the way onward may by as much, in proportion, and a share at least. */
function further(mark: HeatMark, onward: number, row: RowSums, rowBandShare: number): HeatMark {
  const total = periods.reduce((sum, name) => sum + row[name], 0);
  return {
    degreeDays: mark.degreeDays + onward,
    least: mark.least + onward * Math.min(row.leastTotal / total, 1 - rowBandShare),
    most: mark.most + onward * Math.max(row.mostTotal / total, 1 + rowBandShare),
    sources: [...mark.sources, row.source],
  };
}

function scaled(mark: HeatMark, scale: number): HeatMark {
  const { degreeDays, least, most } = mark;
  return { ...mark, degreeDays: degreeDays * scale, least: least * scale, most: most * scale };
}
