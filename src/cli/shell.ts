/** What the command line touches of the world, in one value, so that tests can run it whole. */
import type { Day } from "../dates.js";

export interface Shell {
  /** A document, such as a calendar or a garden file, goes as it is to anything but a terminal. */
  readonly stdout: (text: string, kind?: "document") => void;
  readonly stderr: (text: string) => void;
  /** All of standard input, or some more than the most, where it holds more. */
  readonly readStdin: (mostBytes: number) => Promise<Uint8Array>;
  /** The calendar day it is now, in a time zone. */
  readonly today: (timezone: string) => Day;
  /** The instant it is now, ISO 8601 UTC in whole seconds. */
  readonly now: () => string;
  /** Lets some time go by. */
  readonly pause: (ms: number) => Promise<void>;
  readonly localTimezone: () => string;
  /** Standard output is a terminal of that many columns. */
  readonly columns?: number;
  /** Standard output shows colour: a terminal, and NO_COLOR is not set. */
  readonly color: boolean;
  /** Standard error is a terminal: long work may show how far it is. */
  readonly progress: boolean;
  /** What threads that read gardens run, and how many there may be; without it there are none. */
  readonly threads?: { readonly entry: URL; readonly most: number };
  /** XDG_STATE_HOME, when it is set. */
  readonly stateHome?: string;
}

/** Exit codes: documented in the README, the same for every command. */
export const exitCodes = { fine: 0, problems: 1, usage: 2, io: 3, bug: 70 } as const;

/** Ends a command early with an exit code and a message for standard error. */
export class CommandError extends Error {
  readonly exitCode: number;

  constructor(exitCode: number, message: string) {
    super(message);
    this.exitCode = exitCode;
  }
}

export function wrongUsage(message: string): CommandError {
  return new CommandError(exitCodes.usage, message);
}
