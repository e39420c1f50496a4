/** What a garden file tells of ground. */
import type { Bed, Planting } from "../garden/index.js";
import type { Day } from "../dates.js";

export type SoilKind = "loam" | "sand" | "clay" | "potting-mix";
export type Extract =
  "mehlich-3" | "ammonium-acetate" | "modified-morgan" | "mehlich-1" | "saturated" | "other";

export interface Soil {
  readonly kind?: SoilKind;
  readonly test?: SoilTest;
}
export interface SoilTest {
  readonly on: Day;
  readonly extract: Extract;
  readonly calciumPpm?: number;
  readonly ph?: number;
  readonly phIn: "water" | "cacl2";
  readonly depthCm: number;
  readonly densityKgPerL?: number;
}
export interface Amendment {
  readonly on: Day;
  readonly what: string;
  readonly amountG: number;
  readonly fineness?: "fine" | "medium" | "coarse";
}
export interface Ground extends Bed {
  readonly soil?: Soil;
  readonly amendments: readonly Amendment[];
}
export interface Grown extends Planting {
  readonly areaM2?: number;
}
