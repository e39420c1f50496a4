/** The garden in eight places of the world that `npm run places` prints, for tests. */
// @ts-nocheck

import { stringify } from "yaml";
import type { GardenFile } from "../../src/compiled/garden-file.js";
import type { Plan } from "../../src/season/season-plan.js";
import { cli } from "./run-cli.js";

export interface EightPlace {
  readonly name: string;
  readonly out: string;
  readonly season: { readonly from: string };
}

export const { eightPlaces, gardenIn } = (await import(
  new URL("../../scripts/eight-places.js", import.meta.url).href
)) as { eightPlaces: readonly EightPlace[]; gardenIn: (place: EightPlace) => GardenFile };

/** As the command plans it before the season. */
export async function planOf(garden: GardenFile, today: string): Promise<Plan> {
  const said = await cli(["plan", "-", "--json"], { stdin: stringify(garden), today });
  if (said.code !== 0) throw new Error(said.stderr);
  return JSON.parse(said.stdout) as Plan;
}
