// @ts-nocheck
import { describe, expect, test } from "vitest";
import { batchName } from "../../src/stock/batch-name.js";
import { makingJobs } from "../../src/outputs/making-jobs.js";
import { oddNames, planOf, sixtyBeds, weirCottage, withoutStock } from "./gardens.js";

const text = (markup: string) =>
  markup
    .replace(/<[^>]*>/g, "")
    .replace(/\s+/g, " ")
    .trim();

describe.each([
  ["one garden", planOf(weirCottage)],
  ["US measures", planOf(oddNames)],
  ["sixty beds", planOf(sixtyBeds())],
])("jobs for the stock of %s", (_, plan) => {
  const jobs = makingJobs(plan).map(({ day, words }) => `${day} ${text(words.markup)}`);
  const making = plan.stock?.making;

  test("come in order of days", () => {
    expect(jobs.map((job) => job.slice(0, 10))).toEqual(jobs.map((job) => job.slice(0, 10)).sort());
  });

  test("hold the three visits of each batch, and when what it makes must be used", () => {
    expect(making?.batches.length).toBeGreaterThan(0);
    for (const { id, steps, eggs } of making?.batches ?? [])
      for (const { step, day } of steps) {
        const said = jobs.find(
          (job) =>
            job.startsWith(day) &&
            job.includes(batchName(id)) &&
            job.includes(
              {
                "dry-shells": `${eggs} eggshell`,
                "add-acid": "in an open vessel",
                strain: " and bottle ",
              }[step],
            ),
        );
        expect(said, `${id} ${step}`).toBeDefined();
      }
  });

  test("hold each bottle to be emptied, with what is left", () => {
    for (const { batch, doOn } of making?.discards ?? [])
      expect(
        jobs.some(
          (job) =>
            job.startsWith(doOn) && job.includes(batchName(batch)) && /[Tt]hrow away/.test(job),
        ),
      ).toBe(true);
  });

  test("say nothing twice", () => {
    expect(new Set(jobs).size).toBe(jobs.length);
  });
});

test("there are none without stock", () => {
  expect(makingJobs(withoutStock(planOf(weirCottage)))).toEqual([]);
});

test("tell vinegar by the millilitre", () => {
  const plan = planOf(weirCottage.replace("acid: citric", "acid: vinegar"));
  const said = makingJobs(plan).map(({ words }) => text(words.markup));
  expect(plan.stock?.recipes.length).toBeGreaterThan(0);
  for (const { vinegarMl } of plan.stock?.recipes ?? [])
    expect(
      said.some((job) => job.includes(`into ${Math.round(vinegarMl ?? 0)} mL of vinegar`)),
    ).toBe(true);
});
