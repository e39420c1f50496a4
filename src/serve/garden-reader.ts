/** Reads gardens in this thread, or where there are many in threads of their own. */
import type { MessagePort } from "node:worker_threads";
import type { Problem } from "../problem.js";
import {
  type Documents,
  documentsOf,
  type DocumentsAsk,
  type Reading,
  readingOf,
} from "./garden-reading.js";
import type { AsOf, FileRead, GardenSource } from "./garden-source.js";
import { answerJobs, type WorkerPool, workerPool, type WorkerStart } from "./worker-pool.js";

export interface GardenReader {
  readonly show: (file: string, asOf: AsOf) => Promise<Reading>;
  readonly documents: (ask: DocumentsAsk) => Promise<Documents>;
  /** How many gardens are worth having under way at once. */
  readonly atOnce: () => number;
  /** So many are to be read: threads are started as they come, where their start is worth it. */
  readonly expect: (count: number) => void;
  /** Ends the threads there are; the next many gardens start others. */
  readonly rest: () => Promise<void>;
}

type Job =
  | { readonly make: "show"; readonly file: string; readonly asOf: AsOf }
  | { readonly make: "documents"; readonly ask: DocumentsAsk };

/** A thread takes as long to start as some ten gardens to read. */
const fewestForThreads = 16;

/** @param threads whose entry is a call of {@link readInThread} with the same source */
export function gardenReader(source: GardenSource, threads?: WorkerStart): GardenReader {
  let pool: WorkerPool<Job, Reading | Documents> | undefined;
  return {
    show: (file, asOf) =>
      pool
        ? orFault(pool.run({ make: "show", file, asOf }) as Promise<Reading>, file)
        : readingOf(file, asOf, source),
    documents: (ask) =>
      pool
        ? orFault(pool.run({ make: "documents", ask }) as Promise<Documents>, ask.file)
        : orFault(documentsOf(ask, source), ask.file),
    // One more: its files are read and written while the others are planned.
    atOnce: () => (pool && threads ? threads.most + 1 : 1),
    expect: (count) => {
      if (threads && count > fewestForThreads) pool ??= workerPool(threads);
    },
    rest: async () => {
      const ended = pool;
      pool = undefined;
      await ended?.close();
    },
  };
}

/** What a thread for gardens does. */
export function readInThread(port: MessagePort, source: GardenSource): void {
  answerJobs(port, (job: Job): Promise<Reading | Documents> =>
    job.make === "show" ? readingOf(job.file, job.asOf, source) : documentsOf(job.ask, source),
  );
}

/** A bug, or what ends a thread, is the problem of one garden. */
async function orFault<Made>(made: Promise<Made>, file: string): Promise<Made | Failed> {
  try {
    return await made;
  } catch (error) {
    const { code = "", message } = error as NodeJS.ErrnoException;
    // Of the system, as EACCES; Node's own codes have more than one word.
    if (/^E[A-Z0-9]+$/.test(code)) throw error;
    return faultOf(message, file);
  }
}

interface Failed {
  readonly ok: false;
  readonly reads: readonly FileRead[];
  readonly problems: readonly Problem[];
}

function faultOf(message: string, file: string): Failed {
  const [why = ""] = message.split("\n");
  const problem = {
    code: "program-fault",
    file,
    at: { line: 1, column: 1 },
    message: `the program failed at this garden (${why})`,
    mend: "this is a fault of the program, not of your file: please report it with the garden file",
  };
  return { ok: false, reads: [{ path: file }], problems: [problem] };
}
