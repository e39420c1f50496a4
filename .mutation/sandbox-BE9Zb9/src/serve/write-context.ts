/** What all that answers below the secret of those who write knows. */
// @ts-nocheck

import {
  type GardenToTick,
  serviceWorker,
  tickIndex,
  tickPage,
  type TickView,
  webManifest,
} from "../outputs/index.js";
import type { TickSheet } from "../ticks/index.js";
import type { GardenFolder } from "./garden-folder.js";
import type { GardenWriter } from "./garden-writer.js";
import type { OwnOrigins } from "./post-rules.js";
import type { RateLimit } from "./rate-limit.js";
import type { WebFiles } from "./web-files.js";
import type { FormContext } from "./written-once.js";

/** The pages, whole, and what goes with them. */
export interface WritePages {
  readonly tickPage: (sheet: TickSheet, view: TickView) => string;
  readonly tickIndex: (entries: readonly GardenToTick[]) => string;
  readonly serviceWorker: string;
  readonly webManifest: string;
}

/** How gardens are written into. */
export interface Writing {
  readonly writer: GardenWriter;
  /** Folder of the page on which a garden file is written; without it there is none. */
  readonly webDir?: string;
  /** The real ones unless given. */
  readonly pages?: WritePages;
}

export const realPages: WritePages = { tickPage, tickIndex, serviceWorker, webManifest };

export interface WriteContext extends FormContext {
  readonly pages: WritePages;
  readonly folder: GardenFolder;
  readonly web: WebFiles;
  readonly own: OwnOrigins;
  readonly rate: RateLimit;
  readonly log: (line: string) => void;
}
