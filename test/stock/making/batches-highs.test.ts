import fc from "fast-check";
import highsModule from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import { fewestBatches } from "../../../src/stock/making/batches-fewest.js";
import { type Case, caseOf, coveredMl, demandedMl, keepsToShells, sumMl } from "./making-cases.js";

// The package declares its default export as a CommonJS one; as a module it is the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;
let highs: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  highs = await loadHighs();
});

/**
 * The same problem as an integer program: per slot r, n_r batches of u_r steps in all, and f_r_d mL
 * poured from them for demand d. Largest and smallest batch are multiples of the step here, so that
 * any u_r between n_r times the one and the other can be shared out to n_r batches.
 */
function program(c: Case, aim: "count" | "volume", count?: number): string {
  const { largestMl, smallestMl, stepMl, shelfLifeDays, volumeBy } = c.limits;
  const r = c.slots.map((_, i) => i);
  const serves = (i: number, day: number): boolean => {
    const ready = c.slots[i]?.ready ?? Infinity;
    return ready <= day && day <= ready + shelfLifeDays;
  };
  const pairs = r.flatMap((i) =>
    c.demands.flatMap((d, j) => (serves(i, d.day) ? [{ i, j, name: `f_${i}_${j}` }] : [])),
  );
  const sum = (names: readonly string[]): string => names.join(" + ");
  const rows = [
    ...c.demands.map(
      (d, j) => `${sum(pairs.filter((p) => p.j === j).map((p) => p.name))} = ${d.ml}`,
    ),
    ...r.flatMap((i) => {
      const poured = pairs.filter((p) => p.i === i).map((p) => p.name);
      return [
        `${sum([...poured, `0 n_${i}`])} - ${stepMl} u_${i} <= 0`,
        `${stepMl} u_${i} - ${largestMl} n_${i} <= 0`,
        `${stepMl} u_${i} - ${smallestMl} n_${i} >= 0`,
      ];
    }),
    ...(volumeBy === undefined
      ? []
      : c.slots.map(({ start }) => {
          const until = r.filter((i) => (c.slots[i]?.start ?? Infinity) <= start);
          return `${sum(until.map((i) => `${stepMl} u_${i}`))} <= ${volumeBy(start)}`;
        })),
    ...(count === undefined ? [] : [`${sum(r.map((i) => `n_${i}`))} = ${count}`]),
  ];
  return [
    "Minimize",
    ` obj: ${sum(r.map((i) => (aim === "count" ? `n_${i}` : `${stepMl} u_${i}`)))}`,
    "Subject To",
    ...rows.map((row, k) => ` c${k}: ${row}`),
    "General",
    ...r.flatMap((i) => [` n_${i}`, ` u_${i}`]),
    "End",
  ].join("\n");
}

function solve(c: Case, aim: "count" | "volume", count?: number): number | undefined {
  const solution = highs.solve(program(c, aim, count));
  if (solution.Status === "Infeasible") return undefined;
  expect(solution.Status).toBe("Optimal");
  return Math.round(solution.ObjectiveValue);
}

const size = { days: 60, slots: 18, demands: 25, mostMl: 60, largestMl: 200 };
const inSteps = (c: Case): Case => {
  const up = (ml: number): number => 10 * Math.ceil(ml / 10);
  const largestMl = up(c.limits.largestMl);
  const smallestMl = Math.min(up(c.limits.smallestMl), largestMl);
  return { ...c, limits: { ...c.limits, largestMl, smallestMl } };
};

describe("fewest batches against an integer program solved by HiGHS", () => {
  test.each([
    { shells: false, seed: 1 },
    { shells: true, seed: 2 },
  ])("60 random seasons: as few batches, as little made (shells counted: $shells)", (run) => {
    const cases = fc.sample(
      caseOf({ ...size, shells: run.shells })
        .map(inSteps)
        .filter((c) => c.demands.length > 0),
      { numRuns: 60, seed: run.seed },
    );
    let covered = 0;
    for (const c of cases) {
      const batches = fewestBatches(c.demands, c.slots, c.limits);
      expect(keepsToShells(batches, c)).toBe(true);
      const count = solve(c, "count");
      expect(coveredMl(batches, c) === demandedMl(c)).toBe(count !== undefined);
      if (count === undefined) continue;
      covered++;
      expect(batches.length).toBe(count);
      expect(sumMl(batches)).toBe(solve(c, "volume", count));
    }
    expect(covered).toBeGreaterThan(run.shells ? 15 : 59);
  });
});
