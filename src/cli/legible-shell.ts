import { legible } from "../legible.js";
import type { Shell } from "./shell.js";

/** What we send to a terminal beside text: weights and colours, none of which hides anything. */
const ours = /(\u001b\[(?:0|1|2|22|32|33|39|97;40)m)/;
/** A line that counts up begins anew, and at last is cleared. */
const counting = /^\r(?:[ -~]*|\u001b\[K)$/;

/** The same world, to which nothing is written that hides in a text or acts on a terminal. */
export function legibleShell(world: Shell): Shell {
  return {
    ...world,
    stdout: (text, kind) => {
      const isTerminal = world.columns !== undefined;
      const isPiped = kind === "document" && !isTerminal;
      world.stdout(isPiped ? text : shown(text, world.color), kind);
    },
    stderr: (text) => {
      const isCounting = world.progress && counting.test(text);
      world.stderr(isCounting ? text : shown(text, false));
    },
  };
}

function shown(text: string, isStyled: boolean): string {
  if (!isStyled) return legible(text);
  return text
    .split(ours)
    .map((piece) => (ours.test(piece) ? piece : legible(piece)))
    .join("");
}
