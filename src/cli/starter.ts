import { addDays, day, type Day } from "../dates.js";
import { hemisphereFromZone, knownZone, suggestZone, type ZoneHalves } from "../garden/index.js";

export interface StarterWishes {
  readonly name: string;
  readonly timezone: string;
  readonly today: Day;
  readonly schemaPath: string;
  /** Beside the garden file. */
  readonly calendarFile: string;
  readonly zoneHalves: ZoneHalves;
}

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
  const { name, timezone, today, schemaPath, calendarFile, zoneHalves } = wishes;
  const year = Number(today.slice(0, 4));
  const half = hemisphereFromZone(timezone, zoneHalves);
  const isSouth = half === "south";
  const month = Number(today.slice(5, 7));
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
# Every amount has its unit (9 L, 2 gal, 40 ft2); every date is year-month-day.
version: 1
id: ${idFrom(name)}            # names the garden in calendars: keep it when the name changes
garden: "${name}"
timezone: ${timezone}
season: { from: ${on("03-01")}, to: ${on("10-31")} }
${isSouth ? "hemisphere: south\n" : half === undefined ? askedHalf : ""}
amounts: metric              # how amounts are printed: metric, us or imperial
can: 9 L                     # what one full watering can holds
# sprayer: 2 L               # only for feedings that are sprayed, as on apples
# source_water: { hardness: 120 mg/L }

feeding:
  days: [wed, sat]           # days on which you can feed
  # time: "18:30"            # without it, rounds are all-day entries
  # away: [{ from: ${on("07-10")}, to: ${on("07-24")} }]

calendar:                    # what \`feedround calendar\` writes: every command goes on from it
  file: ${calendarFile}

stock:                       # the liquid feed
  acid: citric               # citric or vinegar
  keep: fridge               # fridge or shelf
  bottles: 500 mL
  shells_per_week: 10        # eggs' shells your household keeps

beds:
  - id: south
    name: South bed
    area: 4 m2
    plantings:
      - id: toms
        crop: tomato         # \`feedround crops\` lists the crops that are known
        plants: 6
        transplanted: ${on("05-20")}
        water: 2 L per plant # in one feeding
        # days_to_harvest: 70  # as the seed packet says
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
