/** What a bed's cover does on a day. */
// @ts-nocheck

import { type Day, within } from "../dates.js";
import type { Cover, CoverKind } from "./garden.js";
import type { Usual } from "./usual.js";

export function standsOn({ from, to }: Cover, day: Day): boolean {
  return within(day, { from: from ?? day, to: to ?? day });
}

type Roof = Cover & { readonly kind: Exclude<CoverKind, "fleece"> };

/** Rain comes through fleece alone. */
export function keepsRainOut(cover: Cover): cover is Roof {
  return cover.kind !== "fleece";
}

/** degC above the air outdoors. */
export function warmerUnder({ kind, warmerC }: Cover, usual: Usual): number {
  return warmerC ?? usual[`cover_${kind}_warmer_c`];
}
