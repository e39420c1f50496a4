// @ts-nocheck
import { readdirSync, readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { stageNames } from "../../src/crops/crop.js";
import { routes } from "../../src/garden/garden.js";
import { signRows } from "../data/data-files.js";
import { type LanguageServer, startLanguageServer } from "../support/language-server.js";
import { cropOffers } from "./offers.js";

const season = "season: { from: 2027-03-01, to: 2027-10-31 }";
const head = `version: 1\ngarden: Weir Cottage\ntimezone: Europe/Dublin\n${season}\n`;
const planting = `beds:
  - id: south
    plantings:
      - id: toms
        transplanted: 2027-05-20
`;

let server: LanguageServer;
beforeAll(async () => {
  server = await startLanguageServer("garden");
});
afterAll(() => server.stop());

const labels = async (text: string): Promise<string[]> =>
  (await server.offered(text)).map(({ label }) => label);

describe("an editor with a garden file", () => {
  test.each<[of: string, text: string, words: readonly string[]]>([
    [
      "every crop word",
      `${head}${planting}        crop: |\n`,
      cropOffers.map(({ label }) => label),
    ],
    ["stages", `${head}${planting}        seen:\n          - stage: |\n`, stageNames],
    ["feed words", `${head}${planting}        feed: |\n`, ["true", "false", ...routes, "both"]],
    ["signs", `${head}${planting}signs:\n  - sign: |\n`, signRows.map(({ key }) => key)],
    ["what a feed holds", `${head}feeds:\n  - holds: [|]\n`, ["sulfate", "phosphate"]],
    [
      "time zones",
      `version: 1\ntimezone: |\n${season}\n`,
      ["America/Chicago", "Asia/Kolkata", "Europe/Dublin", "Europe/Kyiv", "Pacific/Auckland"],
    ],
  ])("is offered %s", async (_, text, words) => {
    expect(await labels(text)).toEqual(expect.arrayContaining([...words]));
  });

  test("is offered keys with their explanations", async () => {
    const offered = await server.offered(`${head}${planting}        pick|\n`);
    const picked = offered.find(({ label }) => label === "picked_until");
    expect(JSON.stringify(picked)).toContain("The day of the last pick");
  });

  test("is told what the plan calls a crop", async () => {
    const offered = await server.offered(`${head}${planting}        crop: |\n`);
    const other = offered.find(({ label }) => label === "courgette");
    expect(other?.documentation).toBe("zucchini (courgette)");
  });

  test.each([
    ["crop", `${head}${planting}        cr|op: tomato\n`, "What grows, in common words"],
    ["timezone", head.replace("time", "time|"), "by its IANA name"],
    ["can", `${head}c|an: 9 L\n`, "What one full can holds"],
    ["stage", `${head}${planting}        seen: [{ sta|ge: harvest }]\n`, "The stage seen"],
  ])("has %s explained, shortly", async (_, text, words) => {
    const explained = await server.explained(text);
    expect(explained).toContain(words);
    expect(explained.split("\n").length).toBeLessThan(40);
  });

  const whole = `${head}${planting}        crop: tomato\n`;
  test.each([
    ["can: 9", "Write the unit behind the number, like 9 L."],
    ["stock: { bottles: 500 }", "Write the unit behind the number, like 500 mL."],
    ["feeding: { time: 1830 }", 'Write it in quotes, like "18:30".'],
    ["id: 7", "put it in quotes if it is all digits"],
  ])("is told how to mend `%s`", async (line, message) => {
    const [complaint, ...more] = await server.complaints(`${whole}${line}\n`);
    expect(complaint?.message).toContain(message);
    expect(complaint?.range.start.line).toBe(whole.split("\n").length - 1);
    expect(more).toEqual([]);
  });

  test("may name any crop", async () => {
    expect(await server.complaints(whole.replace("tomato", "moon melon"))).toEqual([]);
  });

  const examples = new URL("../../examples/", import.meta.url);
  test.each(readdirSync(examples).filter((name) => name.endsWith(".yaml")))(
    "has nothing to complain of in %s",
    async (name) => {
      const text = readFileSync(new URL(name, examples), "utf8");
      expect(await server.complaints(text)).toEqual([]);
      // That nothing is said proves something only where a slip would be told.
      expect(await server.complaints(`${text}\nseasons: {}\n`)).toHaveLength(1);
    },
  );
});
