// @ts-nocheck
import fc from "fast-check";
import highsModule from "highs";
import { beforeAll, describe, expect, test } from "vitest";
import { fewestBatches } from "../../../src/stock/making/batches-fewest.js";
import {
  type Case,
  caseOf,
  coveredMl,
  demandedMl,
  keepsToShells,
  missingDaysOf,
  sumMl,
} from "./making-cases.js";

// The package declares its default export as a CommonJS one; as a module it is the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default;
let highs: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  highs = await loadHighs();
});

/**
 * The same problem as an integer program: per slot r, n_r batches of u_r steps in all, and f_r_d mL
 * poured from them for demand d. Largest and smallest batch are multiples of the step here, so that
 * any u_r between n_r times the one and the other can be shared out to n_r batches. For the days
 * missing before a first demand both are told apart by that demand, y_r_d batches of v_r_d steps: up
 * to a demand nothing is poured from batches that are opened later.
 */
function program(
  c: Case,
  aim: "count" | "volume" | "missing",
  made: { readonly count?: number; readonly volumeMl?: number },
): string {
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
    ...(made.count === undefined ? [] : [`${sum(r.map((i) => `n_${i}`))} = ${made.count}`]),
    ...(made.volumeMl === undefined
      ? []
      : [`${sum(r.map((i) => `${stepMl} u_${i}`))} = ${made.volumeMl}`]),
    ...(aim === "missing" ? r.flatMap(openedRows) : []),
  ];
  function openedRows(i: number): string[] {
    const own = pairs.filter((p) => p.i === i);
    const names = (letter: string): string[] => own.map(({ j }) => `${letter}_${i}_${j}`);
    return [
      `${sum([...names("y"), "0 n_0"])} - n_${i} = 0`,
      `${sum([...names("v"), "0 n_0"])} - u_${i} = 0`,
      ...own.flatMap(({ j }, at) => [
        `${stepMl} v_${i}_${j} - ${largestMl} y_${i}_${j} <= 0`,
        `${stepMl} v_${i}_${j} - ${smallestMl} y_${i}_${j} >= 0`,
        `${sum(names("f").slice(0, at + 1))} - ${names("v")
          .slice(0, at + 1)
          .map((v) => `${stepMl} ${v}`)
          .join(" - ")} <= 0`,
      ]),
    ];
  }
  const objective =
    aim === "missing"
      ? pairs.map(({ i, j }) => `${missingDays(i, j)} y_${i}_${j}`)
      : r.map((i) => (aim === "count" ? `n_${i}` : `${stepMl} u_${i}`));
  function missingDays(i: number, j: number): number {
    const before = (c.demands[j]?.day ?? 0) - (c.slots[i]?.ready ?? 0);
    return Math.max(0, c.limits.readyBeforeDays - before);
  }
  return [
    "Minimize",
    ` obj: ${sum(objective)}`,
    "Subject To",
    ...rows.map((row, k) => ` c${k}: ${row}`),
    "General",
    ...r.flatMap((i) => [` n_${i}`, ` u_${i}`]),
    ...(aim === "missing" ? pairs.flatMap(({ i, j }) => [` y_${i}_${j}`, ` v_${i}_${j}`]) : []),
    "End",
  ].join("\n");
}

function solve(
  c: Case,
  aim: Parameters<typeof program>[1],
  made: Parameters<typeof program>[2] = {},
): number | undefined {
  const solution = highs.solve(program(c, aim, made));
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
  ])(
    "60 random seasons: as few batches, as little made, as many days before (shells counted: $shells)",
    (run) => {
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
        const volumeMl = sumMl(batches);
        expect(volumeMl).toBe(solve(c, "volume", { count }));
        expect(missingDaysOf(batches, c)).toBe(solve(c, "missing", { count, volumeMl }));
      }
      expect(covered).toBeGreaterThan(run.shells ? 15 : 59);
    },
  );
});
