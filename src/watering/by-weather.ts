/** What a planting gives off, less the rain that falls on it. */
import { meadowMmOn, type PlaceWeather } from "../climate/index.js";
import { type DaySpan, eachDay } from "../dates.js";
import type { Bed } from "../garden/index.js";
import type { GrowthPeriods } from "../stages/index.js";
import {
  coefficientOn,
  type Coefficients,
  coefficientsOf,
  type CoefficientTable,
} from "./coefficients.js";
import type { WateringFactors } from "./factors.js";
import type { Standing } from "./growing.js";
import { usableRainMm, usualYear } from "./rain.js";
import { roofFactor, roofOn, underMulch } from "./surroundings.js";
import type { PlantingWatering, UnknownWatering, WateringWeek } from "./watering.js";
import { balancedWeeks, type DayBalance } from "./weeks.js";

export interface WateringTables {
  readonly cropCoefficients: CoefficientTable;
  readonly wateringFactors: WateringFactors;
}

type CoveredBed = Pick<Bed, "cover" | "soil">;

type ByWeather =
  | {
      readonly ok: true;
      readonly value: {
        readonly watering: PlantingWatering & { readonly areaM2: number };
        readonly assumptions: readonly string[];
      };
    }
  | { readonly ok: false; readonly unknown: UnknownWatering };

export function byWeather(
  { planting, crop, life, span, ground }: Standing,
  bed: CoveredBed,
  weather: PlaceWeather | undefined,
  { cropCoefficients, wateringFactors }: WateringTables,
): ByWeather {
  const cannotTell = (why: string): ByWeather => ({
    ok: false,
    unknown: { planting: planting.id, why },
  });
  if (weather === undefined)
    return cannotTell("the climate of the garden's place is not known (`location:`)");
  const found = coefficientsOf(crop, planting, cropCoefficients);
  if (!found.ok) return cannotTell(found.why);
  if (life.periods === undefined) return cannotTell("its growth is not known");
  if (ground === undefined)
    return cannotTell(
      crop.areaM2PerPlant === undefined
        ? `how much ground ${crop.name} has is not known (\`area:\`)`
        : "how much ground it has is not known (`area:`, or `plants:`)",
    );
  const coefficients = underMulch(found, bed.soil?.mulch, wateringFactors);
  const curve = { periods: life.periods, coefficients };
  const weeksIn = (place: PlaceWeather): WateringWeek[] =>
    balancedWeeks(daysOf(span, curve, place, bed, wateringFactors), ground.areaM2);
  const weeks = weeksIn(weather);
  const usualWeeks = weather.days.size === 0 ? weeks : weeksIn(usualYear(weather));
  const roofs = [...new Set([...eachDay(span)].flatMap((d) => roofOn(bed, d) ?? []))];
  return {
    ok: true,
    value: {
      watering: { planting: planting.id, areaM2: ground.areaM2, weeks, usualWeeks },
      assumptions: [
        ...(found.ofGroup === undefined
          ? []
          : [
              `${planting.id}: its crop coefficients are those of a group of crops (${found.ofGroup})`,
            ]),
        ...(weeks.some(({ rainMm }) => rainMm === undefined)
          ? [`no rain is known: none is counted`]
          : []),
        ...roofs.map((roof) => {
          const { value, source } = roofFactor(roof, wateringFactors);
          return `under ${roof === "glass" ? "glass" : "a tunnel"} plants are taken to give off ${value} % of what they would outdoors (${source})`;
        }),
      ],
    },
  };
}

interface Curve {
  readonly periods: GrowthPeriods;
  readonly coefficients: Coefficients;
}

function daysOf(
  span: DaySpan,
  { periods, coefficients }: Curve,
  place: PlaceWeather,
  bed: CoveredBed,
  factors: WateringFactors,
): DayBalance[] {
  return [...eachDay(span)].map((day): DayBalance => {
    const roof = roofOn(bed, day);
    const share = roof === undefined ? 1 : roofFactor(roof, factors).value / 100;
    // FAO-56 eq. 58; to nine places, since sines differ in their last digits from engine to engine.
    const needMm =
      Math.round(share * coefficientOn(day, periods, coefficients) * meadowMmOn(place, day) * 1e9) /
      1e9;
    const rainMm = roof === undefined ? usableRainMm(place, day) : 0;
    return rainMm === undefined ? { day, needMm } : { day, needMm, rainMm };
  });
}
