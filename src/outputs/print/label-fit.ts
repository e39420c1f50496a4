/** The largest letters with which a label's text fits it. */
import { linesNeeded, shortened, widthEm } from "../text-width.js";

/** A paragraph of a label; sizes are relative to the label's letter size. */
export interface LabelLine {
  readonly kind: "title" | "name" | "batch" | "plain" | "strong" | "small";
  readonly text: string;
  /** May be cut when room is short; the whole then comes in small print. */
  readonly mayShorten?: true;
}

export const lineSizes: Readonly<Record<LabelLine["kind"], number>> = {
  title: 1.3,
  name: 1,
  batch: 1.15,
  plain: 1,
  strong: 1,
  small: 0.8,
};

export interface FittedLabel {
  readonly letterPt: number;
  readonly lines: readonly LabelLine[];
}

const mmPerPt = 25.4 / 72;
export const lineHeight = 1.18;
const largestPt = 16;
/** Names are wrapped, not cut, as long as letters need not be smaller than this. */
const comfortablePt = 7;
/** Smaller is not read in a shed; such labels are refused. Common practice, no source. */
const smallestPt = 5;
const stepPt = 0.25;

/** Undefined when even the shortest text in the smallest letters does not fit. */
export function fitLabel(
  lines: readonly LabelLine[],
  widthMm: number,
  heightMm: number,
): FittedLabel | undefined {
  for (const [attempt, leastPt] of [
    [() => lines, comfortablePt],
    [(pt: number) => withSmallPrint(lines, widthMm / (pt * mmPerPt)), smallestPt],
    [(pt: number) => allShort(lines, widthMm / (pt * mmPerPt)), smallestPt],
  ] as const) {
    const fits = (steps: number) => {
      const pt = leastPt + steps * stepPt;
      return heightNeededMm(attempt(pt), widthMm, pt) <= heightMm;
    };
    if (!fits(0)) continue;
    // Halving: what fits in large letters fits in small ones.
    let [most, tooMany] = [0, (largestPt - leastPt) / stepPt + 1];
    while (tooMany - most > 1) {
      const middle = Math.floor((most + tooMany) / 2);
      if (fits(middle)) most = middle;
      else tooMany = middle;
    }
    const letterPt = leastPt + most * stepPt;
    return { letterPt, lines: attempt(letterPt) };
  }
  return undefined;
}

function heightNeededMm(lines: readonly LabelLine[], widthMm: number, pt: number): number {
  return lines.reduce((sum, { kind, text }) => {
    const letterMm = lineSizes[kind] * pt * mmPerPt;
    return sum + linesNeeded(text, widthMm / letterMm, "print") * letterMm * lineHeight;
  }, 0);
}

/** Names that take more than a line are cut to one, and stand whole at the end. */
function withSmallPrint(lines: readonly LabelLine[], labelEm: number): readonly LabelLine[] {
  const long = lines.filter((line) => isTooLong(line, labelEm));
  return [
    ...allShort(lines, labelEm),
    ...long.map(({ text }): LabelLine => ({ kind: "small", text })),
  ];
}

function allShort(lines: readonly LabelLine[], labelEm: number): readonly LabelLine[] {
  return lines.map((line) =>
    isTooLong(line, labelEm)
      ? { ...line, text: shortened(line.text, labelEm / lineSizes[line.kind], "print") }
      : line,
  );
}

function isTooLong({ text, kind, mayShorten }: LabelLine, labelEm: number): boolean {
  return mayShorten === true && widthEm(text, "print") > labelEm / lineSizes[kind];
}
