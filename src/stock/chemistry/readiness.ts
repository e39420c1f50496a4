/** Whether a stock may be bottled and fed: acid spent, gas gone. */
import { acidContents } from "./acid.js";
import { type Brew, brewBatch, fizzing, openAir } from "./brew.js";
import type { Chemistry } from "./constants.js";
import type { Jar } from "./measured-ph.js";
import type { MixResult } from "./trouble.js";

/** What the grower saw; all of it may be missing. */
export interface JarSeen {
  readonly ph?: number;
  readonly bubbles?: boolean;
  readonly daysSinceMixed?: number;
}

export interface Readiness {
  readonly state: "ready" | "too-early" | "still-fizzing" | "still-acid";
  readonly ready: boolean;
  readonly message: string;
  readonly mend: string;
  /** pH below which this jar still holds acid, and below which it still holds its gas. */
  readonly acidBelowPh: number;
  readonly gasBelowPh: number;
}

/**
 * Whether a jar can be strained, by what is seen of it. The limits are this jar's own: what it would
 * read under its own carbon dioxide while still clear, and half-way from there to its pH in air, but
 * never a stock that feeds below the can's lowest pH. Trouble as in {@link brewBatch}.
 *
 * @param reactionDays how long the trade lets this acid work
 */
export function readiness(
  chemistry: Chemistry,
  jar: Jar,
  seen: JarSeen,
  reactionDays: number,
): MixResult<Readiness> {
  const finished = brewBatch(chemistry, { ...jar, gas: openAir(chemistry) });
  if (!finished.ok) return finished;
  const enoughShell = { ...jar, shellG: Math.max(jar.shellG, 2 * shellWanted(chemistry, jar)) };
  const bubbling = brewBatch(chemistry, {
    ...enoughShell,
    gas: fizzing,
    citrateSolidMayForm: false,
  });
  if (!bubbling.ok) return bubbling;
  const inAir = brewBatch(chemistry, { ...enoughShell, gas: openAir(chemistry) });
  if (!inAir.ok) return inAir;
  const limits = {
    acidBelowPh: Math.min(chemistry.practice.canPhLow.value, bubbling.value.ph),
    gasBelowPh: (bubbling.value.ph + inAir.value.ph) / 2,
  };
  const told = judge(seen, finished.value, limits, reactionDays);
  return { ok: true, value: { ...told, ready: told.state === "ready", ...limits } };
}

/** Dry shell that would just use up the acid, g. */
export function shellWanted(chemistry: Chemistry, jar: Pick<Jar, "acid" | "shellPurity">): number {
  const hydrogenMol = acidContents(chemistry, jar.acid).mol.H;
  return ((hydrogenMol / 2) * chemistry.gPerMol.calciumCarbonate) / (jar.shellPurity || 1);
}

type Told = Pick<Readiness, "state" | "message" | "mend">;

function judge(
  seen: JarSeen,
  finished: Brew,
  limits: Pick<Readiness, "acidBelowPh" | "gasBelowPh">,
  reactionDays: number,
): Told {
  const { ph, bubbles, daysSinceMixed } = seen;
  if (ph !== undefined && ph < limits.acidBelowPh) return stillAcid(`pH ${ph}`);
  if (finished.ph < limits.acidBelowPh)
    return stillAcid(`shell is short: it will end at pH ${finished.ph.toFixed(1)}`);
  if (bubbles === true) return stillFizzing("it bubbles");
  if (ph !== undefined && ph < limits.gasBelowPh) return stillFizzing(`pH ${ph}`);
  if (ph === undefined && daysSinceMixed !== undefined && daysSinceMixed < reactionDays)
    return {
      state: "too-early",
      message: `${daysSinceMixed} of ${reactionDays} days have passed since the acid was added`,
      mend: "wait, or measure the pH",
    };
  return { state: "ready", message: "the acid is spent and the gas has left", mend: "strain it" };
}

function stillAcid(why: string): Told {
  return {
    state: "still-acid",
    message: `the stock is still acid (${why})`,
    mend: "add crushed shell and let it stand open until some shell stays undissolved and the bubbles have stopped",
  };
}

function stillFizzing(why: string): Told {
  return {
    state: "still-fizzing",
    message: `the stock still holds carbon dioxide (${why})`,
    mend: "let it stand open, stir it now and then; do not close the vessel",
  };
}
