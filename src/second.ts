import { remembering } from "./values.js";

/** A moment, ms since 1970, to its second: ISO 8601, UTC. Kept for that second: a server asks all the time. */
export function secondText(ms: number): string {
  return textOf(Math.floor(ms / 1000));
}

const textOf = remembering(1, String, (s: number) =>
  new Date(s * 1000).toISOString().replace(".000Z", "Z"),
);
