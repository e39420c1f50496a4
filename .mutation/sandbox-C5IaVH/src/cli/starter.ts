// @ts-nocheck
import { addDays, day, type Day, monthOf, yearOf } from "../dates.js";
import { hemisphereFromZone, knownZone, suggestZone, type ZoneHalves } from "../garden/index.js";

export interface StarterWishes {
  readonly name: string;
  readonly timezone: string;
  readonly today: Day;
  readonly schemaPath: string;
  /** Beside the garden file. */
  readonly calendarFile: string;
  readonly zoneHalves: ZoneHalves;
  /** Measures in which it is written. */
  readonly amounts: keyof typeof starterMeasures;
}

const starterMeasures = {
  metric: {
    example: "9 L, 4 m2",
    place: "latitude: 53.3, longitude: -6.3, elevation: 20 m",
    can: "9 L",
    sprayer: "2 L",
    hardness: "120 mg/L",
    bottles: "500 mL",
    area: "4 m2",
    perPlant: "2 L",
    weekly: "25 L per m2",
  },
  us: {
    example: "2 gal, 40 ft2",
    place: "latitude: 41.6, longitude: -93.6, elevation: 950 ft",
    can: "2 gal",
    sprayer: "2 qt",
    hardness: "7 gpg",
    bottles: "1 pt",
    area: "40 ft2",
    perPlant: "1/2 gal",
    weekly: "0.6 gal per ft2",
  },
} as const;

const southernPlace = "latitude: -41.3, longitude: 173.2, elevation: 20 m";

/** What is wrong with the wishes for a starter file, if anything. */
export function starterProblem(timezone: string): string | undefined {
  if (knownZone(timezone) !== undefined) return undefined;
  const near = suggestZone(timezone);
  return `\`${timezone}\` is no time zone: ${near ? `did you mean \`${near}\`?` : "write it like Europe/Dublin"}`;
}

/**
 * A commented garden file for the season that is nearest, valid as it stands; where the zone does not
 * tell the hemisphere, its season is a northern one and `plan` asks.
 */
export function starterGarden(wishes: StarterWishes): string {
  const { name, timezone, today, schemaPath, calendarFile, zoneHalves, amounts } = wishes;
  const measures = starterMeasures[amounts];
  const year = yearOf(today);
  const half = hemisphereFromZone(timezone, zoneHalves);
  const isSouth = half === "south";
  const month = monthOf(today);
  // From the month in which sowing of the season is over, the next season is the one to plan.
  const from = isSouth ? (month <= 2 ? year - 1 : year) : month <= 9 ? year : year + 1;
  const on = (northMonthDay: string): string => {
    const [m, d] = northMonthDay.split("-").map(Number);
    const shifted = (m ?? 1) + (isSouth ? 6 : 0);
    const firstOfMonth = `${from + (shifted > 12 ? 1 : 0)}-${String(((shifted - 1) % 12) + 1).padStart(2, "0")}-01`;
    // 31 October has no counterpart in April: no later than the 30th.
    return addDays(day(firstOfMonth), Math.min(d ?? 1, 30) - 1);
  };
  return `# yaml-language-server: $schema=${schemaPath}
# A garden file. Change the examples to your own garden, then run: feedround plan <this file>
# Every amount has its unit (${measures.example}); every date is year-month-day.
version: 1
id: ${idFrom(name)}            # names the garden in calendars: keep it when the name changes
garden: "${name}"
timezone: ${timezone}
season: { from: ${on("03-01")}, to: ${on("10-31")} }
${isSouth ? "hemisphere: south\n" : half === undefined ? askedHalf : ""}
# Where the garden lies finds the climate of the place: dates follow its warmth where that is known.
# location: { ${isSouth ? southernPlace : measures.place} }
${noted(`amounts: ${amounts}`, "how amounts are printed: metric, us or imperial")}
${noted(`can: ${measures.can}`, "what one full watering can holds")}
${noted(`# sprayer: ${measures.sprayer}`, "only for feedings that are sprayed, as on apples")}
# source_water: { hardness: ${measures.hardness} }

feeding:
  days: [wed, sat]           # days on which you can feed
  # time: "18:30"            # without it, rounds are all-day entries
  # away: [{ from: ${on("07-10")}, to: ${on("07-24")} }]

calendar:                    # what \`feedround calendar\` writes: every command goes on from it
  file: ${calendarFile}

stock:                       # the liquid feed
  acid: citric               # citric or vinegar
  keep: fridge               # fridge or shelf
  bottles: ${measures.bottles}
  shells_per_week: 10        # eggs' shells your household keeps

beds:
  - id: south
    name: South bed
    area: ${measures.area}
    # watering: auto         # litres a week, where the garden's place is known; or ${measures.weekly}
    # soil: { kind: loam }   # loam, sand, clay or potting-mix; a soil test goes here too
    plantings:
      - id: toms
        crop: tomato         # \`feedround crops\` lists the crops that are known
        plants: 6
        transplanted: ${on("05-20")}
${noted(`        water: ${measures.perPlant} per plant`, "in one feeding")}
        # days_to_harvest: 70  # as the seed packet says
        # picked_until: ${on("10-10")}   # the day of the last pick, where frost does not end it
        # seen: [{ stage: flowering, on: ${on("06-12")} }]   # what you see moves what follows
      - id: celery
        crop: celery
        plants: 8
        transplanted: ${on("05-25")}
      - id: beans            # needs no calcium feed: the plan says why
        crop: green bean
        sown: ${on("05-10")}
`;
}

/** Comments of the lines stand in one column. */
function noted(line: string, comment: string): string {
  return `${line.padEnd(28)} # ${comment}`;
}

/** What the grower must say, as the zone does not. */
const askedHalf = `# hemisphere: north          # north or south of the equator: say which (south: mend the dates, too)
`;

function idFrom(name: string): string {
  const words = name
    .toLowerCase()
    .normalize("NFKD")
    .match(/[a-z0-9]+/g);
  return words?.join("-").slice(0, 60) ?? "my-garden";
}
