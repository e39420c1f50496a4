/** Any text at all: spoilt garden and rule files, YAML of other things, plain noise. */
// @ts-nocheck

import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { stringify } from "yaml";
import { gardenText } from "./a-garden.js";
import { anyGarden } from "./arbitrary-garden.js";

const examples = new URL("../../examples/", import.meta.url);

function exampleTexts(): string[] {
  return readdirSync(examples)
    .filter((name) => name.endsWith(".yaml") && !name.endsWith("rules.yaml"))
    .map((name) => readFileSync(new URL(name, examples), "utf8"));
}

/** Good garden files to be spoilt: few, so that spoiling is most of the work. */
export const goodGardens: readonly string[] = [
  gardenText(),
  ...exampleTexts(),
  ...fc.sample(anyGarden, { numRuns: 60, seed: 20270301 }).map((garden) => stringify(garden)),
];

export const goodRules = `# the grower's own
version: 1
rules:
  - id: my-tomatoes
    crops: [tomatoes]
    groups: [cucurbit]
    stages: [flowering, fruit-set, fruit-growth]
    route: drench
    rate: 10 mL in 4 L
    interval: { shortest: 7 days, target: 10 days, longest: 2 weeks }
    first_within: 5 days
    highest_rate: 5 mL per L
    stop_before_harvest: 3 days
    by_default: true
`;

/** Words that mean something somewhere, in the wrong place, and what breaks readers of text. */
const tokens = [
  ...[
    "2027-02-29",
    "2027-06-31",
    "1899-01-01",
    "2200-12-31",
    "9999-12-31",
    "2027-6-1",
    "0000-00-00",
  ],
  ...["9", "-9", "1e400", ".inf", "-.inf", ".nan", "0", "0x1F", "1/0 L", "0/0 L", "½ gal", "1,5 L"],
  ...["9999999999999999999999 L", "0.0000001 mL", "1 L per 0 m2", "1/0 mL per L", "2 L per plant"],
  ...[
    "4 L per m2",
    "9 kg",
    "9 L",
    "2 gal",
    "25:00",
    "00:00",
    "1 h",
    "366 days",
    "120 days",
    "0 min",
  ],
  ...["tomato", "tomatoe", "lettuce", "apple", "strawberry", "basil", "constructor", "__proto__"],
  ...[
    "sown",
    "transplanted",
    "removed",
    "seen",
    "bloom",
    "feed",
    "level",
    "rate",
    "plants",
    "water",
  ],
  ...[
    "toString",
    "hasOwnProperty",
    "null",
    "~",
    "true",
    "false",
    "yes",
    "foliar",
    "both",
    "drench",
  ],
  ...[
    "&a",
    "*a",
    "<<",
    "!!binary",
    "!x",
    "---",
    "...",
    "%YAML 1.1",
    "%TAG ! x",
    "|",
    ">",
    "? ",
    "- ",
  ],
  ...[
    "[",
    "]",
    "{",
    "}",
    ":",
    ",",
    "#",
    '"',
    "'",
    "\t",
    "\r",
    "\u0000",
    "\ufeff",
    "\u2028",
    "\u0085",
  ],
  ...[
    "Europe/Dublin",
    "UTC",
    "Nowhere/City",
    "flowering",
    "harvest",
    "heading",
    "UTC+1",
    "🍅",
    "ﬃ",
  ],
  ...[
    "version",
    "beds",
    "plantings",
    "id",
    "crop",
    "rules",
    "interval",
    "shortest",
    "south",
    "toms",
  ],
];

const noise = fc.oneof(
  fc.constantFrom(...tokens),
  fc.string({ maxLength: 12 }),
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.integer().map(String),
  fc.double().map(String),
);

/** A place in a text, as a share of it. */
const place = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });

type Spoil = (text: string) => string;

const onLines = (change: (lines: string[], at: number, to: number) => void): fc.Arbitrary<Spoil> =>
  fc.tuple(place, place).map(([at, to]) => (text) => {
    const lines = text.split("\n");
    change(lines, Math.floor(at * lines.length), Math.floor(to * lines.length));
    return lines.join("\n");
  });

const onTokens = (change: (token: string, noise: string) => string): fc.Arbitrary<Spoil> =>
  fc.tuple(place, noise).map(([at, extra]) => (text) => {
    // Words and what stands between them, turn about.
    const parts = text.split(/([\s:,[\]{}]+)/);
    const i = Math.floor(at * parts.length);
    parts[i] = change(parts[i] ?? "", extra);
    return parts.join("");
  });

const onCharacters = (change: (rest: string, noise: string) => string): fc.Arbitrary<Spoil> =>
  fc.tuple(place, noise).map(([at, extra]) => (text) => {
    const i = Math.floor(at * text.length);
    return text.slice(0, i) + change(text.slice(i), extra);
  });

const spoil: fc.Arbitrary<Spoil> = fc.oneof(
  onLines((lines, at) => lines.splice(at, 1)),
  onLines((lines, at) => lines.splice(at, 0, lines[at] ?? "")),
  onLines((lines, at, to) => lines.splice(to, 0, ...lines.splice(at, 1))),
  onLines((lines, at, to) => lines.splice(at, Math.max(0, to - at))),
  onLines((lines, at) => (lines[at] = `  ${lines[at] ?? ""}`)),
  onLines((lines, at) => (lines[at] = (lines[at] ?? "").replace(/^ {1,2}/, ""))),
  onLines((lines, at, to) => (lines[at] = lines[to] ?? "")),
  onTokens((_, extra) => extra),
  onTokens((_, extra) => extra),
  onTokens((token, extra) => `${token} ${extra}`),
  onTokens(() => ""),
  onTokens((token) => token.replace(/\d/, (digit) => String((Number(digit) + 7) % 10))),
  onTokens((token) => token.slice(1)),
  onCharacters((rest, extra) => extra + rest),
  onCharacters((rest) => rest.slice(1)),
  onCharacters((rest, extra) => extra + rest.slice(1)),
  onCharacters(() => ""),
);

function spoiled(good: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .tuple(
      good,
      fc.oneof(fc.array(spoil, { minLength: 1, maxLength: 1 }), fc.array(spoil, { maxLength: 4 })),
    )
    .map(([text, spoils]) => spoils.reduce((now, change) => change(now), text));
}

export const spoiledGarden: fc.Arbitrary<string> = spoiled(fc.constantFrom(...goodGardens));
export const spoiledRules: fc.Arbitrary<string> = spoiled(fc.constant(goodRules));

/** A garden file as an object, with any value at all in the place of one of its own. */
const strangeGarden: fc.Arbitrary<string> = fc
  .tuple(
    anyGarden,
    place,
    fc.oneof(
      fc.anything({ withBigInt: true, withNullPrototype: true }),
      fc.constantFrom(...tokens),
    ),
  )
  .map(([garden, at, value]) => {
    const places: { holder: Record<string, unknown>; key: string }[] = [];
    const walk = (node: unknown): void => {
      if (typeof node !== "object" || node === null) return;
      for (const [key, child] of Object.entries(node)) {
        places.push({ holder: node as Record<string, unknown>, key });
        walk(child);
      }
    };
    const copy = structuredClone(garden) as unknown;
    walk(copy);
    const found = places[Math.floor(at * places.length)];
    if (found) found.holder[found.key] = value;
    return yamlText(copy);
  });

const otherYaml: fc.Arbitrary<string> = fc
  .anything({ withBigInt: true, withObjectString: true, withNullPrototype: true })
  .map(yamlText);

function yamlText(value: unknown): string {
  // Some values of JavaScript have no YAML, and of `undefined` nothing comes.
  try {
    return value === undefined ? "" : stringify(value);
  } catch {
    return typeof value;
  }
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Bytes of files: mostly nearly right, some of anything. */
export const anyBytes: fc.Arbitrary<Uint8Array> = fc.oneof(
  { weight: 12, arbitrary: spoiledGarden.map(utf8) },
  { weight: 4, arbitrary: strangeGarden.map(utf8) },
  { weight: 2, arbitrary: otherYaml.map(utf8) },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 300 }).map(utf8) },
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 300 }) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(fc.constantFrom(...goodGardens), place, fc.nat(255))
      .map(([text, at, b]) => {
        const bytes = utf8(text);
        bytes[Math.floor(at * bytes.length)] = b;
        return bytes;
      }),
  },
);
