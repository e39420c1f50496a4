/** What is in the bottle once the jar is strained: the liquid, and the crystals that pass. */
// @ts-nocheck

import type { PourStyle, Strainer } from "../../garden/index.js";
import type { Brew } from "./brew.js";
import type { Chemistry } from "./constants.js";
import { type Contents, crystalContents, mixed, scaled } from "./contents.js";

export interface StockLiquid {
  /** The clear liquid: amounts of a whole batch. */
  readonly liquid: Contents;
  readonly liquidMl: number;
  /** Liquid water in it; less than `liquid.waterKg` by what is bound. */
  readonly waterKg: number;
  readonly crystals: Contents;
  /** Crystals count in: what a shaken bottle pours. */
  readonly shakenMl: number;
  readonly ph: number;
  readonly temperatureC: number;
  /** Crystals have come, or were let come; false while the liquor is still clear throughout. */
  readonly crystalsMayForm: boolean;
  /** Calcium as poured from the shaken bottle, and from one left to settle. */
  readonly shakenGPerL: number;
  readonly clearGPerL: number;
}

/** Part of a stock on its way into the can. */
export interface Dose {
  readonly contents: Contents;
  /** From the stock, for telling it from the tap's. */
  readonly calciumMg: number;
  readonly crystalsMayForm: boolean;
}

/** Share of the white, 0 to 1, that comes through and into the bottle. */
export function whitePassed({ practice }: Chemistry, strainer: Strainer): number {
  switch (strainer) {
    case "mesh":
      return practice.meshPassesShare.value;
    case "cloth":
      return practice.clothPassesShare.value;
  }
}

/**
 * The jar without its undissolved shell.
 *
 * @param passed share of the crystals, 0 to 1, that goes through the strainer: all when not given
 */
export function strained(chemistry: Chemistry, brew: Brew, passed = 1): StockLiquid {
  const { equilibrium, liquidMl, crystalsMl, calciumInCrystalsG } = brew;
  const dissolvedG = equilibrium.dissolved.mol.Ca * chemistry.gPerMol.calcium;
  const shakenMl = liquidMl + passed * crystalsMl;
  return {
    liquid: equilibrium.dissolved,
    liquidMl,
    waterKg: equilibrium.waterKg,
    crystals: scaled(crystalContents(chemistry, equilibrium.solidMol), passed),
    shakenMl,
    ph: brew.ph,
    temperatureC: brew.input.temperatureC,
    crystalsMayForm: brew.input.citrateSolidMayForm,
    shakenGPerL: (1000 * (dissolvedG + passed * calciumInCrystalsG)) / shakenMl,
    clearGPerL: (1000 * dissolvedG) / liquidMl,
  };
}

/** Share 0 to 1 of a stock, by what was poured. */
export function share(
  chemistry: Chemistry,
  stock: StockLiquid,
  part: number,
  pour: PourStyle,
): Dose {
  const whole = pour === "shaken" ? mixed(stock.liquid, stock.crystals) : stock.liquid;
  const contents = scaled(whole, part);
  return {
    contents,
    calciumMg: 1000 * contents.mol.Ca * chemistry.gPerMol.calcium,
    crystalsMayForm: pour === "shaken" && stock.crystalsMayForm,
  };
}

/** `ml` of the stock as poured. */
export function poured(
  chemistry: Chemistry,
  stock: StockLiquid,
  ml: number,
  pour: PourStyle,
): Dose {
  return share(chemistry, stock, ml / (pour === "shaken" ? stock.shakenMl : stock.liquidMl), pour);
}

/** Doses in one can; at least one. */
export function together(doses: readonly Dose[]): Dose {
  return doses.reduce((a, b) => ({
    contents: mixed(a.contents, b.contents),
    calciumMg: a.calciumMg + b.calciumMg,
    crystalsMayForm: a.crystalsMayForm || b.crystalsMayForm,
  }));
}

/**
 * The same stock, its amounts in proportion to a strength the grower measured (g of calcium per L, as
 * poured); the volume stays.
 */
export function atStrength(
  stock: StockLiquid,
  measuredGPerL: number,
  pour: PourStyle,
): StockLiquid {
  const factor = measuredGPerL / (pour === "shaken" ? stock.shakenGPerL : stock.clearGPerL);
  return {
    ...stock,
    liquid: { ...scaled(stock.liquid, factor), waterKg: stock.liquid.waterKg },
    crystals: scaled(stock.crystals, factor),
    shakenGPerL: stock.shakenGPerL * factor,
    clearGPerL: stock.clearGPerL * factor,
  };
}
