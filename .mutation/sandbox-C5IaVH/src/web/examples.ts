/** The example gardens, and the rules that one of them names. */
// @ts-nocheck

import backGarden from "../../examples/back-garden.yaml";
import midSeason from "../../examples/mid-season.yaml";
import orchardCorner from "../../examples/orchard-corner.yaml";
import orchardRules from "../../examples/orchard-rules.yaml";
import sharedGarden from "../../examples/shared-garden.yaml";

const texts: Readonly<Record<string, string>> = {
  "back-garden": backGarden,
  "mid-season": midSeason,
  "orchard-corner": orchardCorner,
  "shared-garden": sharedGarden,
};

export function example(name: string): string {
  const text = texts[name];
  if (text === undefined) throw new Error(`no example ${name}`);
  // The schema of the first line lies beside the examples alone.
  return text.replace(/^# yaml-language-server:.*\n/, "");
}

/** Files that they name. */
export const exampleFiles: Readonly<Record<string, string>> = {
  "orchard-rules.yaml": orchardRules,
};
