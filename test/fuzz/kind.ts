/** What a kind of input is to the hunt: how one is made of dice, and what must hold of it. */
import type { Dice } from "../live/player/dice.js";

/** Read as good input, or refused with problems. */
export type Verdict = "accepted" | "refused";

export interface Kind<T = unknown> {
  readonly name: string;
  /** Of a thousand inputs. */
  readonly share: number;
  /** Once, before the first input. */
  readonly begin: () => Hunting<T> | Promise<Hunting<T>>;
}

export interface Hunting<T = unknown> {
  /** The same dice make the same input. */
  readonly make: (dice: Dice) => T;
  /** Throws where something that must hold does not. */
  readonly check: (input: T) => Verdict | Promise<Verdict>;
  /** As it is kept where it fails. */
  readonly shown: (input: T) => string | Uint8Array;
  /** Takes away what `begin` made. */
  readonly end?: () => void | Promise<void>;
}

export function aKind<T>(kind: Kind<T>): Kind {
  return kind as Kind;
}
