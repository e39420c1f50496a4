/** Weather files, seen and forecast, of the forms that services give. */
import { weatherDays } from "../../src/climate/index.js";
import { day } from "../../src/dates.js";
import { planGarden } from "../../src/plan-garden.js";
import { loadNormals, loadTables } from "../../src/tables.js";
import { gardenText, planted } from "../support/a-garden.js";
import { weatherForms } from "../climate/weather-form-files.js";
import { aKind, type Hunting } from "./kind.js";
import { mustBeRightProblems } from "./must-hold.js";
import { mustBeRightPlan } from "./season-holds.js";
import { spoilBytes, spoilText } from "./spoil-text.js";

interface WeatherInput {
  readonly seen: string;
  readonly forecast: string;
  readonly isPlanned: boolean;
}

const forms = Object.values(weatherForms);

const files = { seen: "seen.csv", forecast: "next.csv" } as const;
const today = "2027-06-01";
const garden = gardenText({
  ...planted({ warmth: "on" }),
  season: { from: "2027-05-01", to: "2027-09-30" },
  location: { latitude: 53.1, longitude: -6.2 },
  watering: { days: ["tue"] },
  weather: files,
});

const words = [
  ...[
    "date",
    "Date",
    "DATE",
    "tmin_c",
    "tmax_c",
    "rain_mm",
    "tmin_f",
    "TMIN",
    "TMAX",
    "PRCP",
    "time",
  ],
  ...[
    "temperature_2m_max (°C)",
    "precipitation_sum (mm)",
    "YYYYMMDD",
    "20270501",
    "1/5/2027",
    "NaN",
  ],
  ...["-9999", "-999", "*", "T", "", "5 C", "1,5", "-40", "61", "99", "1e9", "2027-05-01"],
];

async function begin(): Promise<Hunting<WeatherInput>> {
  const tables = loadTables();
  const normals = await loadNormals();
  return {
    make: (dice) => {
      const one = (): string => {
        const text = dice.pick(forms);
        return dice.chance(0.15) ? text : spoilText(text, dice, { words, others: forms });
      };
      const utf8 = (text: string): string => new TextDecoder().decode(spoilBytes(text, dice));
      return { seen: utf8(one()), forecast: utf8(one()), isPlanned: dice.chance(0.12) };
    },
    shown: ({ seen, forecast }) => `${seen}\n=== forecast ===\n${forecast}`,
    check: ({ seen, forecast, isPlanned }) => {
      const texts = { [files.seen]: seen, [files.forecast]: forecast, "garden.yaml": garden };
      const read = weatherDays(
        {
          seen: { file: files.seen, text: seen },
          forecast: { file: files.forecast, text: forecast },
        },
        { today: day(today), since: day("2026-05-01"), season: day("2027-05-01") },
      );
      if (!read.ok) {
        mustBeRightProblems(read.problems, texts);
        return "refused";
      }
      if (!isPlanned) return "accepted";
      const weather = { seen, forecast };
      const plan = planGarden(garden, tables, { today, weather, normals });
      if (!plan.ok) {
        mustBeRightProblems(plan.problems, texts);
        return "refused";
      }
      mustBeRightPlan(plan.value, seen, forecast);
      return "accepted";
    },
  };
}

export const weatherFiles = aKind({ name: "weather", share: 210, begin });
