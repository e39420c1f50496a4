// @ts-nocheck
import { expect, test } from "vitest";
import { tickPage } from "../../../src/outputs/tick/tick-page.js";
import { readTick } from "../../../src/ticks/form.js";
import { oddNames } from "../gardens.js";
import { exampleText, tickingOn } from "./tick-gardens.js";

type Field = readonly [name: string, value: string];

function unescaped(text: string): string {
  const letters: Record<string, string> = { lt: "<", gt: ">", quot: '"', "#39": "'", amp: "&" };
  return text.replace(/&(lt|gt|quot|#39|amp);/g, (_, name: string) => letters[name] ?? "");
}

/** What a browser sends of each form whose lists have a choice and whose first button is pressed. */
function formsOf(document: string): Field[][] {
  return [...document.matchAll(/<form\b[^]*?<\/form>/g)].map(([form]) => {
    const inputs = [...form.matchAll(/<input\b[^>]*>/g)].flatMap(([input]): Field[] => {
      const name = /name="([^"]*)"/.exec(input)?.[1];
      const value = /value="([^"]*)"/.exec(input)?.[1] ?? "";
      return name === undefined ? [] : [[name, unescaped(value)]];
    });
    const lists = [...form.matchAll(/<select name="([^"]*)"[^]*?<\/select>/g)].map(
      ([list, name = ""]): Field => {
        const values = [...list.matchAll(/<option\s+value="([^"]*)"/g)].map(([, v = ""]) => v);
        return [name, unescaped(values.find((value) => value !== "") ?? "")];
      },
    );
    return [...inputs, ...lists];
  });
}

test.each([
  ["back-garden", "2027-06-23"],
  ["mid-season", "2027-07-05"],
  ["shared-garden", "2027-06-17"],
  ["orchard-corner", "2027-06-20"],
])(
  "every form of %s on %s is one that the server takes, each with an id of its own",
  async (name, today) => {
    const { sheet, view } = await tickingOn(today, exampleText(name));
    const forms = formsOf(tickPage(sheet, view));
    expect(forms.length).toBeGreaterThan(sheet.plantings.length);
    for (const form of forms)
      expect(readTick(form), JSON.stringify(form)).toMatchObject({ ok: true });
    const ids = forms.map((form) => form.find(([field]) => field === "form")?.[1]);
    expect(new Set(ids).size).toBe(forms.length);
  },
);

test("names are text, whatever they are made of", async () => {
  const { sheet, view } = await tickingOn("2027-06-19", oddNames);
  const document = tickPage(sheet, view);
  expect(document).not.toContain("<script>alert");
  expect(document).not.toContain('" onmouseover="alert');
  for (const form of formsOf(document)) expect(readTick(form).ok).toBe(true);
});

test("what is past comes latest first, and names its own day", async () => {
  const { sheet, view } = await tickingOn("2027-07-07", exampleText("back-garden"));
  const [first] = sheet.rounds;
  if (first === undefined) throw new Error("no round");
  const rounds = [
    { ...first, day: "2027-06-09" as typeof first.day },
    { ...first, day: "2027-06-23" as typeof first.day },
  ];
  const document = tickPage({ ...sheet, rounds, steps: [] }, view);
  const before = document.slice(document.indexOf('id="before"'));
  expect(before.indexOf("round 2027-06-23")).toBeLessThan(before.indexOf("round 2027-06-09"));
  expect(before).toMatch(/name="on" value="2027-06-23"\s*>\s*Given that day/);
});

test("nobody can say before its day that a round was not given", async () => {
  const { sheet, view } = await tickingOn("2027-06-23", exampleText("back-garden"));
  const document = tickPage(sheet, view);
  const later = document.slice(document.indexOf('id="later"'), document.indexOf('id="seen"'));
  expect(later).toMatch(/class="by-then"\s+hidden/);
  expect(document.slice(document.indexOf('id="due"'), document.indexOf('id="later"'))).toMatch(
    /class="by-then"\s*>/,
  );
});

test.each([
  [{ kind: "written", told: "given" } as const, "Take back"],
  [{ kind: "conflict", now: "given on Wed", wanted: "missed" } as const, "mark it again"],
  [{ kind: "refused", told: ["no such bottle"] } as const, "no such bottle"],
  [{ kind: "already", told: "given" } as const, "Nothing was written"],
])("what became of a form stands on top: %o", async (outcome, words) => {
  const lately = [{ form: "a".repeat(22), told: "given", canTakeBack: true }];
  const { sheet, view } = await tickingOn("2027-06-23", exampleText("back-garden"), {
    ...{ outcome, lately },
  });
  const document = tickPage(sheet, view);
  const box = /<section[^>]*data-outcome[^]*?<\/section>/.exec(document)?.[0] ?? "";
  expect(box).toContain(words);
  expect(document.indexOf("data-outcome")).toBeLessThan(document.indexOf('id="due"'));
});
