/** A thread that reads gardens; `main.ts` names it, and it knows nothing of the command line. */
import { Settings } from "luxon";
import { parentPort, workerData } from "node:worker_threads";
import { readInThread } from "../serve/index.js";
import { type ReadingWishes, sourceOf } from "./garden-reading.js";

Settings.throwOnInvalid = true;

if (parentPort === null) throw new Error("this is no program of its own: see main.ts");
readInThread(parentPort, sourceOf(workerData as ReadingWishes));
