import { describe, expect, test } from "vitest";
import { addDays, day } from "../../../src/dates.js";
import { planView } from "../../../src/outputs/page/plan-view.js";
import { planOn } from "../../live/a-live-garden.js";

const plan = planOn("2027-03-01");
const jobs = [
  ...plan.rounds.map((round) => round.day),
  ...(plan.stock?.making.batches ?? []).flatMap(({ steps }) => steps.map((step) => step.day)),
].sort();
const first = day(jobs[0] ?? "");

describe("what stands beside a file that is written", () => {
  test("begins with what its day asks for", () => {
    expect(planView(plan, first).firstLine).toMatch(/^Today/);
  });

  test("begins with the next day that asks for something, and how far it is", () => {
    expect(planView(plan, addDays(first, -1)).firstLine).toMatch(/ \(tomorrow\)$/);
    expect(planView(plan, addDays(first, -9)).firstLine).toMatch(/ \(in 9 days\)$/);
  });

  test("says that nothing comes, after the season and where nothing is planted", () => {
    const empty = planOn("2027-03-01", { beds: [{ id: "south", plantings: [] }] });
    const before = planView(empty, day("2027-06-01")).firstLine;
    expect(before).toBe("No round is planned in this season");
    const over = planView(plan, day("2027-12-01")).firstLine;
    expect(over).toMatch(/^The season is over: it ended Sun 31 Oct/);
  });

  test("has the same parts for each garden, empty where there is nothing to say", () => {
    const empty = planOn("2027-03-01", { beds: [{ id: "south", plantings: [] }] });
    const [parts, ofEmpty] = [plan, empty].map((one) => planView(one, first).parts);
    expect(ofEmpty?.map(({ id }) => id)).toEqual(parts?.map(({ id }) => id));
    const unplanted = [parts, ofEmpty].map(
      (all) => all?.find(({ id }) => id === "unplanted")?.markup,
    );
    expect(unplanted[0]).toBe("");
    expect(unplanted[1]).toContain("Nothing to plan yet");
  });
});
