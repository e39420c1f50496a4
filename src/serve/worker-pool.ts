/** Threads that do jobs, one at a time each: what ends a thread costs the job it was at, and no other. */
import { type MessagePort, Worker } from "node:worker_threads";

/** How to start the threads. */
export interface WorkerStart {
  /** A module that calls {@link answerJobs}. */
  readonly entry: URL;
  /** At once, at most. */
  readonly most: number;
  /** What each gets as its `workerData`. */
  readonly data?: unknown;
  /** Memory of each. */
  readonly heapMb?: number;
}

export interface WorkerPool<Job, Done> {
  /** Rejects with the error that the work threw or its thread ended with. */
  readonly run: (job: Job) => Promise<Done>;
  /** Ends the threads once all jobs are done. */
  readonly close: () => Promise<void>;
}

/** Of a thread. Our choice: several times what the largest garden file takes. */
const usualHeapMb = 1024;

type Answer<Done> = { readonly done: Done } | { readonly failed: unknown };

interface Waiting<Job, Done> {
  readonly job: Job;
  readonly resolve: (done: Done) => void;
  readonly reject: (error: Error) => void;
}

/** Starts a thread only for a job that finds all others at work. */
export function workerPool<Job, Done>({
  entry,
  most,
  data,
  heapMb = usualHeapMb,
}: WorkerStart): WorkerPool<Job, Done> {
  const waiting: Waiting<Job, Done>[] = [];
  const atWork = new Map<Worker, Waiting<Job, Done>>();
  const idle: Worker[] = [];
  const jobs = new Set<Promise<Done>>();

  const start = (): Worker => {
    const worker = new Worker(entry, {
      workerData: data,
      resourceLimits: { maxOldGenerationSizeMb: heapMb },
    });
    let why = new Error("its thread ended");
    worker.on("message", (answer: Answer<Done>) => {
      const job = atWork.get(worker);
      atWork.delete(worker);
      idle.push(worker);
      if ("done" in answer) job?.resolve(answer.done);
      else job?.reject(asError(answer.failed));
      next();
    });
    worker.on("error", (error) => (why = asError(error)));
    worker.on("exit", () => {
      const job = atWork.get(worker);
      atWork.delete(worker);
      if (idle.includes(worker)) idle.splice(idle.indexOf(worker), 1);
      job?.reject(why);
      next();
    });
    return worker;
  };

  const next = (): void => {
    while (idle.length > 0 || atWork.size < most) {
      const job = waiting.shift();
      if (job === undefined) return;
      const worker = idle.pop() ?? start();
      atWork.set(worker, job);
      worker.postMessage(job.job);
    }
  };

  return {
    run: (job) => {
      const done = new Promise<Done>((resolve, reject) => {
        waiting.push({ job, resolve, reject });
        next();
      }).finally(() => jobs.delete(done));
      jobs.add(done);
      return done;
    },
    close: async () => {
      while (jobs.size > 0) await Promise.allSettled(jobs);
      await Promise.all(idle.map((worker) => worker.terminate()));
    },
  };
}

/** In a thread: answers each job that comes. What the work throws is told, and the thread goes on. */
export function answerJobs(port: MessagePort, work: (job: never) => Promise<unknown>): void {
  port.on("message", (job) => {
    void work(job as never)
      .then(
        (done): Answer<unknown> => ({ done }),
        (failed: unknown): Answer<unknown> => ({ failed }),
      )
      .then((answer) => {
        port.postMessage(answer);
      });
  });
}

function asError(thrown: unknown): Error {
  return thrown instanceof Error ? thrown : new Error(String(thrown));
}
