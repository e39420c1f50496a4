/** The soil of a bed, what a laboratory found in it, and what was given to it. */
// @ts-nocheck

import type { Day } from "../dates.js";

export const soilKinds = ["loam", "sand", "clay", "potting-mix"] as const;
export type SoilKind = (typeof soilKinds)[number];
export const mulches = ["straw", "wood-chips", "leaves", "compost", "grass", "black-film"] as const;
export type Mulch = (typeof mulches)[number];
/** What a laboratory draws the calcium out of the soil with; figures of two of them cannot be compared. */
export const extracts = [
  "mehlich-3",
  "ammonium-acetate",
  "modified-morgan",
  "mehlich-1",
  "saturated",
  "other",
] as const;
export type Extract = (typeof extracts)[number];
export const amendmentKinds = [
  "limestone",
  "dolomite",
  "gypsum",
  "wood-ash",
  "bone-meal",
  "eggshell",
  "oyster-shell",
  "rock-phosphate",
  "calcium-nitrate",
  "superphosphate",
] as const;
export type AmendmentKind = (typeof amendmentKinds)[number];
export const grades = ["fine", "medium", "coarse"] as const;
export type Fineness = (typeof grades)[number];

export interface Soil {
  readonly kind?: SoilKind;
  readonly mulch?: Mulch;
  readonly test?: SoilTest;
}

/** At least one of calcium and pH is there. */
export interface SoilTest {
  readonly on: Day;
  /** There wherever calcium is. */
  readonly extract?: Extract;
  /** mg per kg of dry soil; in a saturated extract, mg/L of it. */
  readonly calciumPpm?: number;
  readonly ph?: number;
  readonly phIn: "water" | "cacl2";
  /** As given; see the usual depth. */
  readonly depthCm?: number;
  readonly densityKgPerL?: number;
}

export interface Amendment {
  readonly on: Day;
  readonly what: AmendmentKind;
  /** To the whole bed. */
  readonly amountG: number;
  readonly fineness?: Fineness;
}
