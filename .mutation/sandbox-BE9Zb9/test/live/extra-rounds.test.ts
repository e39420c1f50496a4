// @ts-nocheck
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { planted, gardenText } from "../support/a-garden.js";
import { cli, scratchFile, scratchFolder } from "../support/run-cli.js";

const days = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
const toms = { transplanted: "2027-04-14", water: "6 L" };
const onMondays = gardenText({ id: "weir-cottage", feeding: { days: ["mon"] }, ...planted(toms) });

/** Keeping the Mondays of the first planting costs a round more than moving them to suit both. */
const withMore = (extra_rounds?: number): string =>
  gardenText({
    id: "weir-cottage",
    feeding: { days, extra_rounds },
    ...planted(toms, { id: "more", transplanted: "2027-05-08", water: "6 L" }),
  });

function feedingDays(calendar: string): string[] {
  const events = calendar.split("BEGIN:VEVENT").filter((e) => !e.includes("STATUS:CANCELLED"));
  return events.flatMap((event) => /X-FEEDROUND-KEY:feeding\/\/(\S+)/.exec(event)?.[1] ?? []);
}

/** The days published first, and those published after the edit. */
const publishers = {
  calendar: async (edited: string, more: readonly string[]): Promise<[string[], string[]]> => {
    const out = join(scratchFolder(), "plot.ics");
    const daysOf = async (text: string, argv: readonly string[]): Promise<string[]> => {
      const said = await cli(["calendar", "-", "--out", out, ...argv], { stdin: text });
      expect(said).toMatchObject({ code: 0 });
      return feedingDays(readFileSync(out, "utf8"));
    };
    return [await daysOf(onMondays, []), await daysOf(edited, more)];
  },
  publish: async (edited: string, more: readonly string[]): Promise<[string[], string[]]> => {
    const file = scratchFile("plot.yaml", onMondays);
    const folder = join(scratchFolder(), "public");
    const daysOf = async (argv: readonly string[]): Promise<string[]> => {
      expect(await cli(["publish", folder, file, ...argv])).toMatchObject({ code: 0 });
      return feedingDays(readFileSync(join(folder, "plot.ics"), "utf8"));
    };
    const before = await daysOf([]);
    writeFileSync(file, edited);
    return [before, await daysOf(more)];
  },
};

describe.each(["calendar", "publish"] as const)("%s keeps published days", (command) => {
  const lostBy = async (edited: string, ...more: string[]): Promise<number> => {
    const [before, after] = await publishers[command](edited, more);
    return before.filter((day) => !after.includes(day)).length;
  };

  test("at no extra round, unless it may spend one: by its option, or by the garden file", async () => {
    expect(await lostBy(withMore())).toBeGreaterThan(0);
    expect(await lostBy(withMore(), "--extra-rounds", "1")).toBe(0);
    expect(await lostBy(withMore(1))).toBe(0);
  });

  test("and the option goes before the garden file", async () => {
    expect(await lostBy(withMore(1), "--extra-rounds", "0")).toBeGreaterThan(0);
  });
});

test("extra rounds that are no number of rounds are a problem with its place", async () => {
  const { code, stderr } = await cli(["check", "-"], { stdin: withMore(-1) });
  expect(code).toBe(1);
  expect(stderr).toMatch(/<stdin>:\d+:\d+: .*extra_rounds/);
});
