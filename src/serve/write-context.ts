/** What all that answers below the secret of those who write knows. */
import type { TickView } from "../outputs/index.js";
import type { TickSheet } from "../ticks/index.js";
import type { GardenFolder } from "./garden-folder.js";
import type { OwnOrigins } from "./post-rules.js";
import type { RateLimit } from "./rate-limit.js";
import type { WebFiles } from "./web-files.js";
import type { FormContext } from "./written-once.js";

export interface GardenToTick {
  readonly title: string;
  readonly address: string;
  readonly hasProblems: boolean;
  readonly asks?: string;
}

/** How gardens are written into, and on which pages. */
export interface Writing extends Pick<FormContext, "writer"> {
  /** A whole HTML page. */
  readonly tickPage: (sheet: TickSheet, view: TickView) => string;
  /** All gardens; their addresses are relative. */
  readonly tickIndex: (entries: readonly GardenToTick[]) => string;
  /** Scripts and facts that go with it, whole texts. */
  readonly serviceWorker: string;
  readonly manifest: string;
  /** Folder of the page on which a garden file is written; without it there is none. */
  readonly webDir?: string;
}

export interface WriteContext extends FormContext, Omit<Writing, "webDir"> {
  readonly folder: GardenFolder;
  readonly web: WebFiles;
  readonly own: OwnOrigins;
  readonly rate: RateLimit;
  readonly log: (line: string) => void;
}
