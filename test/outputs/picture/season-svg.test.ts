import { describe, expect, test } from "vitest";
import { stageNames } from "../../../src/crops/crop.js";
import { html } from "../../../src/outputs/html.js";
import { pictureDefs, stageColours } from "../../../src/outputs/picture/picture-marks.js";
import { seasonDrawings, seasonSvg } from "../../../src/outputs/picture/season-svg.js";
import { shortDate } from "../../../src/garden/day-words.js";
import {
  nothingFed,
  oddNames,
  planOf,
  sixtyBeds,
  thirdRound,
  weirCottage,
  withoutStock,
} from "../gardens.js";

const weir = planOf(weirCottage);
const { round: third, today } = thirdRound(weir);
const count = (text: string, part: RegExp) => text.match(part)?.length ?? 0;
const svg = seasonSvg(weir, { today });

describe("the season as a picture", () => {
  test("shows a bar for each stage, in the pattern of the stage", () => {
    const stages = weir.plantings.flatMap((p) => p.stages);
    expect(count(svg, /class="bar"[^>]*y="(?!1")/g)).toBeGreaterThanOrEqual(stages.length);
    for (const { stage } of stages) expect(svg).toContain(`url(#fr-${stage})`);
  });

  test("shows a mark for each round and each feeding, its shape saying which way", () => {
    const mixes = weir.rounds.flatMap((r) => r.beds.flatMap((bed) => bed.mixes));
    const feedings = (route: string) =>
      mixes.filter((m) => m.route === route).flatMap((m) => m.feedings).length;
    // One more of each in the key.
    expect(count(svg, /href="#fr-round"/g)).toBe(weir.rounds.length + 1);
    expect(count(svg, /href="#fr-drop"/g)).toBe(feedings("drench") + 1);
    expect(count(svg, /href="#fr-spray"/g)).toBe(feedings("foliar") + 1);
  });

  test("shows stock on hand, and for each bottle when it keeps until", () => {
    expect(svg).toContain("Stock on hand, at most");
    expect(svg).toContain("\u2068B1\u2069, use by 6 Aug");
    for (const { id } of weir.stock?.making.batches ?? []) expect(svg).toContain(id);
    expect(seasonSvg(withoutStock(weir))).not.toContain("Stock on hand");
  });

  test("tells all of it in words as well", () => {
    const desc = /<desc[^>]*>([\s\S]*?)<\/desc>/.exec(svg)?.[1] ?? "";
    expect(desc).toContain("Season from 1 March 2027 to 31 October 2027. ");
    expect(desc).toContain(
      `${weir.rounds.length} rounds: ${weir.rounds.map(({ day }) => shortDate(day, "metric")).join(", ")}`,
    );
    for (const { name, stages } of weir.plantings) {
      expect(desc).toContain(name);
      expect(stages.length).toBeGreaterThan(0);
    }
    expect(desc).toMatch(/fruit set \d+ \w+ to \d+ \w+/);
    expect(desc).toMatch(/B1.*in hand, ready 8 May, use by 6 Aug/);
  });

  test("marks today and the next round when it is told the day, and neither when not", () => {
    expect(count(svg, /class="today"/g)).toBe(2);
    expect(count(svg, /round-mark next/g)).toBe(1);
    expect(svg).toContain(`the next is on ${shortDate(third.day, "metric")}`);
    expect(seasonSvg(weir)).not.toMatch(/class="today"|round-mark next/);
  });

  test("shows plantings that are not fed, and says so", () => {
    expect(svg).toContain("(not fed)");
  });

  test("is whole for a garden where nothing is fed, and for one without plantings", () => {
    expect(seasonSvg(planOf(nothingFed))).toContain("No rounds in this season");
    expect(seasonSvg({ ...planOf(nothingFed), plantings: [] })).toMatch(/<\/svg>\n$/);
  });

  test("escapes names and never lets them turn their neighbours", () => {
    const odd = seasonSvg(planOf(oddNames));
    expect(odd).not.toMatch(/<script|<b>/);
    expect(odd).toContain("\u2068حديقة الخضروات الجنوبية\u2069");
  });
});

describe("patterns", () => {
  const defs = pictureDefs().markup;

  test("are there for every stage, no two alike, so that colour is not needed", () => {
    const drawn = stageNames.map((stage) => {
      const body = new RegExp(
        `<pattern\\s+id="fr-${stage}"[\\s\\S]*?<g class="ink"\\s*>([\\s\\S]*?)</g`,
      ).exec(defs)?.[1];
      expect(body, stage).toBeDefined();
      return body?.trim();
    });
    expect(new Set(drawn).size).toBe(stageNames.length);
  });

  test("have a colour in light and in dark", () => {
    for (const theme of ["light", "dark"] as const)
      for (const stage of stageNames)
        expect(stageColours(theme)).toMatch(new RegExp(`--fill-${stage}:#[0-9a-f]{6}`));
  });
});

describe("drawings for a page", () => {
  const sixty = planOf(sixtyBeds());
  const drawings = seasonDrawings(sixty, { today }).map((drawing) => html`${drawing}`.markup);

  test("are never taller than half a printed page, nor leave a bed out", () => {
    const beds = drawings.filter((drawing) => drawing.includes("fr-beds-"));
    expect(beds.length).toBeGreaterThan(4);
    for (const drawing of beds)
      expect(Number(/height="(\d+)"/.exec(drawing)?.[1])).toBeLessThanOrEqual(500);
    for (const { bedName } of sixty.plantings)
      expect(
        beds.filter((drawing) =>
          new RegExp(`<text[^>]*>\\u2068\\u2068${bedName}\\u2069`).test(drawing),
        ),
      ).toHaveLength(1);
  });

  test("each say what they show, and of their own beds only", () => {
    for (const drawing of drawings)
      expect(drawing).toMatch(/role="img"[\s\S]*aria-labelledby[\s\S]*<title[\s\S]*<desc/);
    const [, first] = drawings;
    const desc = /<desc[^>]*>([\s\S]*?)<\/desc>/.exec(first ?? "")?.[1] ?? "";
    expect(desc).toContain("Bed 1\u2069");
    expect(desc).not.toContain("Bed 60");
  });
});
