// @ts-nocheck
import { describe, expect, test } from "vitest";
import { addDays, day, type Day } from "../../../src/dates.js";
import { pageScript } from "../../../src/outputs/page/page-script.js";
import { pageStyle } from "../../../src/outputs/page/page-style.js";
import { gardenPage } from "../../../src/outputs/page/page.js";
import type { Plan, Round } from "../../../src/season/season-plan.js";
import { longDay, shortDay } from "../../../src/garden/day-words.js";
import { batchName } from "../../../src/stock/batch-name.js";
import { askedDays } from "../../../src/words/today.js";
import { aBedRound, aFill, aMix, aPlan, aRound, aWarning } from "../../support/a-plan.js";
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

/** Text as a reader meets it: tags gone, entities undone, blanks and isolation marks evened out. */
function told(markup: string): string {
  return markup
    .replace(/<(style|script|svg)[\s\S]*?<\/\1>/g, " ")
    .replace(/<[^>]*>/g, "")
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, "&")
    .replace(/\u00a0|\s+/g, " ");
}

function section(page: string, id: string): string {
  return new RegExp(`<section id="${id}"[\\s\\S]*?</section>`).exec(page)?.[0] ?? "";
}

describe("what the day asks for", () => {
  const start = weir.stock?.making.batches[0]?.startOn ?? day("2027-01-01");
  const first = (plan: Plan, on?: Day) =>
    told(section(gardenPage(plan, on === undefined ? {} : { today: on }), "today")).trim();

  test("stands before everything else on the page, jobs for the stock with their minutes", () => {
    const page = gardenPage(weir, { today: start });
    expect(page.indexOf("<h2")).toBe(page.indexOf('<h2 id="today-head"'));
    expect(page.indexOf('id="today"')).toBeLessThan(page.indexOf('id="next"'));
    expect(first(weir, start)).toMatch(
      /^Next: \S+ \d+ \w+, boil \d+ eggshells and set them out to dry; 20 minutes /,
    );
  });

  test("is of the next day with something to do, and names the day on which the page was written", () => {
    expect(first(weir, addDays(start, -1))).toContain(`Next: ${shortDay(start, "metric")}, boil`);
    expect(first(weir, addDays(start, -1))).toContain(
      `Page written ${shortDay(addDays(start, -1), "metric")}`,
    );
    expect(first(weir)).not.toContain("written");
  });

  test("holds for a reader on any day: each day's line is on the page, and none says today", () => {
    const page = gardenPage(weir, { today: start });
    for (const { day: on, asks } of askedDays(weir, start))
      expect(page.replace(/\s+/g, " ")).toContain(
        `data-day="${on}" data-short="${shortDay(on, "metric")}" data-asks="${asks}"`,
      );
    for (const id of ["today", "next", "rounds"])
      expect(told(section(page, id))).not.toMatch(/\btoday\b|\btomorrow\b|\bin \d+ days\b/);
  });

  test("is nothing after the season and in an empty plan, which is said without a next", () => {
    const over = { ...weir, today: day("2027-12-01") };
    expect(first(over, over.today)).toMatch(
      /^The season is over: it ended Sun 31 Oct Still to do: use up or throw away .* Page written/,
    );
    expect(first(withoutStock({ ...over, rounds: [] }), over.today)).toMatch(
      /^The season is over: it ended Sun 31 Oct Page written/,
    );
    const none = planOf(nothingFed);
    expect(first(none)).toMatch(/^No round is planned in this season None of the plantings needs/);
    for (const page of [gardenPage(over, { today: over.today }), gardenPage(none)]) {
      expect(page).not.toContain('id="next"');
      expect(told(page)).not.toContain("Next");
    }
  });

  test("names the year where it is another", () => {
    expect(first(weir, day("2026-12-30"))).toMatch(/^Next: \w+ \d+ \w+ 2027, /);
  });

  test("goes before warnings of the two weeks to come, folded, and no others", () => {
    const warnings = [
      aWarning({ planting: "toms", day: day("2027-06-12"), message: "toms are late" }),
      aWarning({ day: day("2027-06-24"), message: "shells are short" }),
      aWarning({ day: day("2027-06-25"), message: "much later" }),
    ];
    const on = day("2027-06-10");
    expect(first(aPlan({ warnings }), on)).toMatch(
      /2 warnings until Thu 24 Jun: toms Warning: toms are late.*Warning: shells are short/,
    );
    expect(first(aPlan({ warnings }), on)).not.toContain("much later");
    expect(first(aPlan({ warnings: warnings.slice(0, 1) }), on)).toContain(
      "Warning: toms are late",
    );
  });
});

describe("the next round", () => {
  test("says day, cans, mL in each, bed and bottle", () => {
    const next = told(section(gardenPage(weir, { today }), "next"));
    expect(next).toContain(longDay(third.day, "metric"));
    for (const { bedName, mixes } of third.beds) {
      expect(next).toContain(bedName);
      for (const fill of mixes.flatMap(({ fills }) => fills))
        expect(next).toMatch(
          new RegExp(`${fill.full ? "full" : "part"} (can|sprayer)s? ${fill.stockText} `),
        );
    }
    expect(next).toMatch(/Take: \d+ mL from batch B1/);
  });

  test("is that of today when today is a round, until it is written down as given", () => {
    const rounds = [aRound({ day: day("2027-06-12") }), aRound({ day: day("2027-06-19") })];
    const page = (plan: Plan) =>
      told(section(gardenPage(plan, { today: day("2027-06-12") }), "next"));
    expect(page(aPlan({ notes: [], rounds }))).toMatch(/Saturday 12 June/);
    const given = rounds.map((r, i) => (i === 0 ? { ...r, given: true as const } : r));
    expect(page(aPlan({ notes: [], rounds: given }))).toMatch(/Saturday 19 June/);
  });

  test("is the first of the season on a page without a day", () => {
    const [first] = weir.rounds as [Round];
    expect(told(section(gardenPage(weir), "next"))).toContain(longDay(first.day, "metric"));
  });

  test("carries the warnings of its day that do not stand above it, and the cautions of its work", () => {
    const plan = aPlan({
      notes: [],
      warnings: [
        aWarning({ day: day("2027-06-12"), message: "toms are late" }),
        aWarning({ message: "another day" }),
      ],
    });
    const next = told(section(gardenPage(plan, { today: day("2027-05-10") }), "next"));
    expect(next).toContain("Warning: toms are late");
    expect(section(gardenPage(plan, { today: day("2027-06-10") }), "next")).not.toContain(
      "Warning",
    );
    expect(next).not.toContain("another day");
    expect(next).toContain("away from food and children");
  });

  test("says to shake, where the garden pours its stock shaken", () => {
    const page = told(gardenPage(weir, { today: day("2027-06-10") }));
    expect(weir.stock?.pour).toBe("shaken");
    expect(page).toContain("Shake the bottle. Measure");
    expect(page).not.toContain("unless you pour off");
  });

  test("of many cans begins with what to mix, and each bed opens from a line", () => {
    const fills = [
      aFill({ count: 4 }),
      aFill({ full: false, waterL: 4, waterText: "4 L", stockMl: 10, stockText: "10 mL" }),
    ];
    const beds = ["A", "B"].map((bed) =>
      aBedRound({ bed, bedName: bed, mixes: [aMix({ fills })] }),
    );
    const next = section(gardenPage(aPlan({ rounds: [aRound({ beds })] })), "next");
    expect(told(next)).toMatch(/Mix\s+8 full cans: 23 mL\s*2 × 4 L: 10 mL/);
    expect(next.match(/<summary>/g)).toHaveLength(2);
    expect(told(next)).toMatch(/A\s+4 cans: 23 mL\s+4 L: 10 mL/);
    const few = section(gardenPage(aPlan({ rounds: [aRound({ beds: beds.slice(1) })] })), "next");
    expect(few).not.toMatch(/<summary>|class="mixing"/);
  });

  test("has more than one bottle told apart, in the order of pouring", () => {
    const [round] = weir.rounds.slice(3);
    if (round === undefined) throw new Error("no round");
    const pours = [
      { batch: "old", ml: 7, strengthGPerL: 17 },
      { batch: "new", ml: 15, strengthGPerL: 18 },
    ];
    const beds = round.beds.map((bed) => ({
      ...bed,
      mixes: bed.mixes.map((mix) => ({ ...mix, pours })),
    }));
    const page = told(section(gardenPage({ ...weir, rounds: [{ ...round, beds }] }), "next"));
    expect(page).toMatch(/Pour 7 mL from batch old, then 15 mL from batch new\./);
  });

  test("lists other feeds of the day in cans of their own", () => {
    const feeds = [
      {
        feed: "nettle <b>tea</b>",
        bed: "south",
        bedName: "South bed",
        plantings: ["toms"],
        rateMlPerL: 100,
        waterL: 9,
        openedSince: day("2027-05-13"),
        fills: [
          { count: 1, full: true, waterL: 9, stockMl: 900, waterText: "9 L", stockText: "900 mL" },
        ],
      },
    ];
    const page = told(
      section(gardenPage(aPlan({ notes: [], rounds: [aRound({ feeds })] })), "next"),
    );
    expect(page).toMatch(
      /nettle <b>tea<\/b>: 1 can, 900 mL.*Other feeds, in cans of their own.*nettle <b>tea<\/b>, South bed: 1 full can: 900 mL in 9 L, from a bottle opened since 13 May/,
    );
  });
});

describe("the rest of the page", () => {
  test("comes in the order in which it is wanted", () => {
    const page = gardenPage(weir, {
      today,
      subscribe: { webcal: "webcal://x/a.ics", http: "http://x/a.ics" },
    });
    const ids = [...page.matchAll(/<section id="([a-z]+)"/g)].map((match) => match[1]);
    expect(ids).toEqual([
      "today",
      "next",
      "rounds",
      "season",
      "origin",
      "calcium",
      "making",
      "warnings",
      "why",
      "assumptions",
      "subscribe",
    ]);
  });

  test("gives each planting its reason, rule, source and arithmetic, fed or not", () => {
    const why = told(section(gardenPage(weir), "why"));
    for (const { reason } of weir.plantings)
      expect(why).toContain(reason.replaceAll("`", "").slice(0, 60));
    for (const rule of weir.rules) expect(why).toContain(rule.source);
    expect(why).toMatch(/toms \(tomato\) South bed, fed/);
    expect(why).toMatch(/lett \(lettuce\) South bed, not fed/);
    expect(why).toMatch(/mL\/L.* × 12 L = \d+(\.\d+)? mL/);
  });

  test("links each feeding of a round to its reason", () => {
    const page = gardenPage(planOf(oddNames));
    const links = [...page.matchAll(/href="#(why-[^"]+)"/g)].map((match) => match[1]);
    expect(links.length).toBeGreaterThan(0);
    for (const link of links) expect(page).toContain(`id="${link ?? ""}"`);
  });

  test("says what would be short, and what the log and signs changed", () => {
    const plan = aPlan({
      notes: [
        {
          code: "sign",
          planting: "toms",
          day: day("2027-06-12"),
          message: "blossom-end rot seen",
          advice: ["water evenly"],
        },
      ],
    });
    expect(told(section(gardenPage(plan), "notes"))).toMatch(
      /Sat 12 Jun blossom-end rot seen\. water evenly/,
    );
  });

  test("gives each batch its recipe, step by step on the days of its visits, with the cautions", () => {
    const making = told(section(gardenPage(weir), "making"));
    for (const { batch, steps } of weir.stock?.recipes ?? []) {
      const { steps: planned = [] } =
        weir.stock?.making.batches.find(({ id }) => id === batch) ?? {};
      expect(planned).toHaveLength(3);
      const recipe = making.slice(making.indexOf(`How to make ${batchName(batch)}`));
      for (const { text, cautions } of steps)
        for (const line of [text, ...cautions]) expect(recipe).toContain(line);
      for (const { day: on } of planned) expect(recipe).toContain(`${shortDay(on, "metric")}: `);
    }
    expect(told(section(gardenPage(weir), "rounds"))).toMatch(
      /stir \d+(\.\d)? g of them bit by bit into \d+(\.\d)? g of citric acid in \d+ mL/,
    );
  });

  test("leaves out the stock where none was planned", () => {
    const page = gardenPage(withoutStock(weir), { today });
    expect(page).not.toContain('id="making"');
    expect(told(page)).not.toContain("Stock on hand");
    expect(told(section(page, "next"))).toContain(longDay(third.day, "metric"));
  });

  test("says why there is nothing to feed", () => {
    const none = planOf(nothingFed);
    expect(told(section(gardenPage(none), "today"))).toContain(
      "None of the plantings needs calcium",
    );
    expect(told(section(gardenPage({ ...none, plantings: [] }), "today"))).toContain(
      "No plantings",
    );
  });

  test("is told that the garden file is broken, where, and which plan it is", () => {
    const problems = [
      {
        code: "x",
        file: "garden.yaml",
        at: { line: 3, column: 7 },
        message: "`can: 9` has no unit",
        mend: "write `can: 9 L`",
      },
    ];
    const page = told(gardenPage(weir, { today, problems, lastGood: "12 June 2027, 18:03" }));
    expect(page).toContain(
      "The garden file has 1 problem. This is the last good plan, of 12 June 2027, 18:03.",
    );
    expect(page).toContain("garden.yaml:3:7: can: 9 has no unit: write can: 9 L");
  });
});

describe("what a user wrote", () => {
  const page = gardenPage(planOf(oddNames), { today, updated: "<i>now</i>" });

  test("never becomes markup", () => {
    expect(page.match(/<script/g)).toHaveLength(1);
    expect(page.replace(/="[^"]*"/g, "")).not.toMatch(/<b>Bob|<i>now|<[^>]*onmouseover/);
    expect(told(page)).toContain("<script>alert(1)</script>");
    expect(told(page)).toContain("<b>Bob & Sons'</b>");
  });

  test("is kept apart where it may run right to left", () => {
    expect(page).toMatch(/<h3><bdi>حديقة الخضروات الجنوبية<\/bdi><\/h3>/);
    expect(page).toContain("<bdi>פלפל אדום מתוק</bdi>");
  });

  test.each([
    ["javascript:alert(1)", "data:text/html,x"],
    ["javascript:alert(1)//weir.ics", "../weir.ics"],
    ["//elsewhere.example/weir.ics", "//elsewhere.example/weir.ics"],
  ])("never becomes an address that runs or leads away: %s, %s", (webcal, http) => {
    const page = gardenPage(weir, { subscribe: { webcal, http } });
    expect(page).not.toMatch(/javascript:|data:text|elsewhere|\.\.\//);
  });

  test("links a calendar beside the page by its name alone", () => {
    const page = gardenPage(weir, { subscribe: { webcal: "weir.ics", http: "weir.ics" } });
    expect(section(page, "subscribe")).toContain('href="weir.ics"');
  });

  test("says of a code that it leads to this page", () => {
    const links = { webcal: "webcal://x/a.ics", http: "http://x/a.ics", qrSvg: "<svg></svg>" };
    expect(section(gardenPage(weir, { subscribe: links }), "subscribe")).toContain(
      'aria-label="QR code of this page\'s address"',
    );
  });
});

describe("the document", () => {
  const page = gardenPage(weir, { today });

  test("holds the one style and the one script that a policy can name", () => {
    expect([...page.matchAll(/<style>([\s\S]*?)<\/style>/g)].map((m) => m[1])).toEqual([pageStyle]);
    expect([...page.matchAll(/<script>([\s\S]*?)<\/script>/g)].map((m) => m[1])).toEqual([
      pageScript,
    ]);
    expect(page).not.toMatch(/ style=| on[a-z]+=/);
  });

  test("names nothing outside itself", () => {
    expect(page).not.toMatch(/(src|href)="(?!#|data:,)|url\((?!#)|@import/);
  });

  test("has no id twice", () => {
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("is the same for the same plan, and small enough for a phone with sixty beds", () => {
    const sixty = planOf(sixtyBeds());
    expect(gardenPage(sixty, { today })).toBe(gardenPage(sixty, { today }));
    expect(gardenPage(sixty, { today }).length).toBeLessThan(1_000_000);
  });
});
