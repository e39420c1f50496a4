import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stageNames } from "../../src/crops/crop.js";
import { day, dayFromNumber } from "../../src/dates.js";
import { routes } from "../../src/garden/garden.js";
import { batchStepKeys } from "../../src/garden/garden-edit.js";
import { readTick, tickFields } from "../../src/ticks/form.js";
import type { Fields } from "../../src/ticks/form-reader.js";
import type { Tick, Ticked } from "../../src/ticks/tick.js";
import { given } from "../../src/values.js";

const id = "AAAAAAAAAAAAAAAAAAAAAA";
const round: Ticked = {
  kind: "round",
  day: day("2027-06-12"),
  beds: ["south"],
  entries: [
    { planting: "toms", stock: "30 mL", batch: "B1" },
    { planting: "peppers", stock: "12 mL", batch: "B1" },
  ],
};
const fields = tickFields({ id, seen: "-", what: round });

function what(...more: Fields): Ticked {
  const asked = readTick([...fields, ...more]);
  if (!asked.ok || asked.value.kind !== "tick") throw new Error(JSON.stringify(asked));
  return asked.value.tick.what;
}

function refused(form: Fields): readonly string[] {
  const asked = readTick(form);
  if (asked.ok) throw new Error(`it was read: ${JSON.stringify(asked.value)}`);
  return asked.problems.map(({ message }) => message);
}

function without(name: string): Fields {
  return fields.filter(([one]) => one !== name);
}

const ids = fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9._-]{0,20}$/);
const days = fc.integer({ min: 20_000, max: 22_000 }).map(dayFromNumber);
const entries = fc
  .record(
    {
      planting: ids,
      stock: fc.constantFrom("30 mL", "2 1/4 tsp", "5.001 tsp"),
      batch: fc
        .string({ minLength: 1, maxLength: 20, unit: "grapheme-ascii" })
        .map((s) => s.trim()),
      route: fc.constantFrom(...routes),
      feed: fc.constantFrom("seaweed", "Wurmtee 50 %"),
    },
    { requiredKeys: ["planting"] },
  )
  .filter(({ batch }) => batch !== "");
const ticked: fc.Arbitrary<Ticked> = fc.oneof(
  fc.record({
    kind: fc.constant("round" as const),
    day: days,
    beds: fc.uniqueArray(fc.oneof(ids, fc.constant("feed:seaweed")), { minLength: 1 }),
    entries: fc.array(entries, { minLength: 1 }),
  }),
  fc.record({
    kind: fc.constant("round" as const),
    day: days,
    beds: fc.uniqueArray(ids, { minLength: 1 }),
    missed: fc.constant(true as const),
    entries: fc.constant([]),
  }),
  fc.record(
    {
      kind: fc.constant("step" as const),
      batch: ids,
      step: fc.constantFrom(...batchStepKeys),
      volume: fc.constantFrom("900 mL", "0.9 L"),
    },
    { requiredKeys: ["kind", "batch", "step"] },
  ),
  fc.record({
    kind: fc.constant("sign" as const),
    planting: ids,
    sign: fc.constantFrom("tipburn", "white-crust"),
  }),
  fc.record({
    kind: fc.constant("stage" as const),
    planting: ids,
    stage: fc.constantFrom(...stageNames),
  }),
);

test("a tick that went through a form is the same", () => {
  fc.assert(
    fc.property(ticked, fc.option(days), (one, on) => {
      const tick: Omit<Tick, "tappedMs"> = {
        id,
        seen: "-",
        what: one,
        ...given({ on: on ?? undefined }),
      };
      expect(readTick(tickFields(tick))).toEqual({ ok: true, value: { kind: "tick", tick } });
    }),
  );
});

test("any fields are read or refused with words", () => {
  const name = fc.oneof(
    fc.constantFrom("form", "seen", "kind", "day", "bed", "entry", "missed", "stock-0", "on", "of"),
    fc.string(),
  );
  fc.assert(
    fc.property(fc.array(fc.tuple(name, fc.string())), (some) => {
      const asked = readTick([...fields.slice(0, 3), ...some]);
      if (!asked.ok) expect(asked.problems.length).toBeGreaterThan(0);
    }),
  );
});

test("a form of an undo names the form that it takes back", () => {
  const of = "BBBBBBBBBBBBBBBBBBBBBB";
  expect(
    readTick([
      ["form", id],
      ["kind", "undo"],
      ["of", of],
    ]),
  ).toEqual({ ok: true, value: { kind: "undo", id, of } });
});

test("the moment of the tap comes along", () => {
  const asked = readTick([...fields, ["tapped", "1812787200000"]]);
  expect(asked).toMatchObject({ value: { tick: { tappedMs: 1_812_787_200_000 } } });
});

test("a day that is left empty is none", () => {
  expect(readTick([...fields, ["on", ""]])).toEqual(readTick(fields));
});

describe("given otherwise", () => {
  test("a bare number is in the unit that the page showed", () => {
    expect(what(["stock-0", "25"])).toMatchObject({
      entries: [{ planting: "toms", stock: "25 mL", batch: "B1" }, { planting: "peppers" }],
    });
    const spoons = { ...round, entries: [{ planting: "toms", stock: "2 1/4 tsp" }] };
    expect(
      readTick([...tickFields({ id, seen: "-", what: spoons }), ["stock-0", "1 1/2"]]),
    ).toMatchObject({ value: { tick: { what: { entries: [{ stock: "1 1/2 tsp" }] } } } });
  });

  test("an amount with its own unit, and a comma for the point, is that", () => {
    expect(what(["stock-1", "2,5 cl"])).toMatchObject({ entries: [{}, { stock: "2.5 cl" }] });
  });

  test.each(["", " ", "0", "0 mL", "0,0"])(
    "an amount of '%s' is of one that was missed",
    (stock) => {
      expect(what(["stock-0", stock])).toMatchObject({
        entries: [
          { planting: "toms", missed: true },
          { planting: "peppers", stock: "12 mL" },
        ],
      });
    },
  );

  test("a word is no amount: it is kept as it was typed, for the garden to refuse", () => {
    expect(what(["stock-0", "abc"])).toMatchObject({ entries: [{ stock: "abc" }, {}] });
  });

  test("of two bottles, none from one is no feeding missed", () => {
    const both: Ticked = {
      ...round,
      entries: [
        { planting: "toms", stock: "20 mL", batch: "B1" },
        { planting: "toms", stock: "10 mL", batch: "B2" },
      ],
    };
    const form: Fields = [...tickFields({ id, seen: "-", what: both }), ["stock-0", "0"]];
    expect(readTick(form)).toMatchObject({
      value: { tick: { what: { entries: [{ planting: "toms", stock: "10 mL", batch: "B2" }] } } },
    });
    expect(readTick([...form, ["stock-1", ""]])).toMatchObject({
      value: { tick: { what: { entries: [{ planting: "toms", missed: true }] } } },
    });
  });

  test("another bottle, or none that is known", () => {
    expect(what(["batch-0", "B2"], ["batch-1", ""])).toMatchObject({
      entries: [
        { planting: "toms", stock: "30 mL", batch: "B2" },
        { planting: "peppers", stock: "12 mL" },
      ],
    });
  });
});

describe("a form is refused", () => {
  test.each<[string, Fields, string]>([
    ["without its id", without("form"), "the field `form` is missing"],
    ["with an id of another length", [...without("form"), ["form", "A"]], "does not hold"],
    ["with a field twice", [...fields, ["day", "2027-06-13"]], "the field `day` comes twice"],
    ["with a field of its own", [...fields, ["colour", "red"]], "the field `colour` is not known"],
    [
      "with a field of hidden letters, which are shown",
      [...fields, ["a\u202eb\u001b", ""]],
      "the field `a\\u202eb\\u001b` is not known",
    ],
    ["of no day", [...without("day"), ["day", "2027-02-30"]], "the field `day` does not hold"],
    ["without a bed", without("bed"), "no bed is marked"],
    ["that says nothing of its beds", without("entry"), "nothing is said of the beds"],
    ["with words over two lines", [...fields, ["bed", "a\nb"]], "the field `bed` does not hold"],
    ["with an entry that is no text of ours", [...fields, ["entry", "["]], "the field `entry`"],
    ["with a day in an entry", [...fields, ["entry", '{"on":"2027-06-01"}']], "the field `entry`"],
    [
      "with an entry of far too much",
      [...fields, ["entry", `{"bed":"${"a".repeat(70)}"}`]],
      "entry",
    ],
    ["with more fields than any garden", Array(5001).fill(["bed", "a"]) as Fields, "5001 fields"],
    [
      "that changes an entry it has not",
      [...fields, ["stock-9", "1 mL"]],
      "`stock-9` is not known",
    ],
  ])("%s", (_, form, told) => {
    expect(refused(form).join("\n")).toContain(told);
  });
});
