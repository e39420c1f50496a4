import { expect, test } from "vitest";
import { recipePage } from "../../../src/outputs/page/recipe-page.js";
import { planOn } from "../../live/a-live-garden.js";

test("recipes to print are of the batches that are left to make", () => {
  const page = recipePage(planOn("2027-03-01", { stock: { shells_per_week: 20 } }));
  expect(page).toContain("recipes</h1>");
  expect(page).not.toContain("No batch is left");
});

test("without a batch to make it says so, and warns all the same", () => {
  const page = recipePage(planOn("2027-03-01", { beds: [{ id: "south", plantings: [] }] }));
  expect(page).toContain("No batch is left to make in this season.");
  expect(page).toContain("salmonella");
});
