// @ts-nocheck
import { describe, expect, test } from "vitest";
import { html } from "../../../src/outputs/html.js";
import { seasonDrawings } from "../../../src/outputs/picture/season-drawings.js";
import { stageTable } from "../../../src/outputs/picture/stage-table.js";
import { oddNames, planOf, sixtyBeds, weirCottage } from "../gardens.js";

const sixty = planOf(sixtyBeds());
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;
const markup = html`${seasonDrawings(sixty, { today: sixty.today })}`.markup;

describe("the picture on a page", () => {
  test("is one table with one head and a row for each fed planting, none taller than 22 px", () => {
    const fed = sixty.plantings.filter((planting) => planting.fed);
    expect(count(markup, /<thead/g)).toBe(1);
    expect(count(markup, /height="22" tabindex="0"/g)).toBe(fed.length);
  });

  test("says a bed's name once in the gutter, and keeps its rows together", () => {
    const weir = html`${seasonDrawings(planOf(weirCottage))}`.markup;
    expect(count(weir, /<th class="bed-name"[^>]*title="South bed"/g)).toBe(1);
    expect(weir).toMatch(/<th class="bed-name"[^>]*rowspan="\d"/);
  });

  test("has its marks' lines once, and no style that a policy would stop", () => {
    expect(count(markup, /class="round-line"/g)).toBe(sixty.rounds.length);
    expect(markup).not.toMatch(/ style=/);
  });

  test("isolates each name", () => {
    const odd = html`${seasonDrawings(planOf(oddNames))}`.markup;
    expect(odd).toContain("<bdi>حديقة الخضروات الجنوبية</bdi>");
    expect(odd).toContain("<bdi>פלפל אדום מתוק</bdi>");
  });

  test("has the stages of every planting in a table below", () => {
    const weir = planOf(weirCottage);
    const table = html`${stageTable(weir)}`.markup;
    expect(count(table, /<th scope="row"/g)).toBe(weir.plantings.length);
    expect(table).toMatch(/fruit set \d+ \w+ to \d+ \w+/);
    expect(stageTable({ ...weir, plantings: [] })).toBeUndefined();
  });
});
