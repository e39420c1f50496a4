// @ts-nocheck
export interface RequestFacts {
  readonly atMs: number;
  readonly address: string | undefined;
  readonly method: string | undefined;
  /** What it led to, in our own words: nothing of the address as asked for, which may hold a secret. */
  readonly what: string;
  readonly status: number;
  readonly bytes: number;
  readonly tookMs: number;
}

/** `2027-06-01T06:00:00Z 192.0.2.7 GET weir-cottage.ics 200 5120 B 0.4 ms` */
export function requestLine(facts: RequestFacts): string {
  const { atMs, address = "-", method = "-", what, status, bytes, tookMs } = facts;
  const took = Math.round(tookMs * 10) / 10;
  const at = `${new Date(atMs).toISOString().slice(0, 19)}Z`;
  return `${at} ${address} ${method} ${what} ${status} ${bytes} B ${took} ms`;
}

/** What only a bug of ours throws. */
export function bugLine(error: unknown): string {
  return `bug: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
}

/** Lines that are written together, once the work at hand is done: a write each is felt under load. */
export interface BatchedLines {
  readonly log: (line: string) => void;
  /** Writes what is still waiting; before the program ends. */
  readonly flush: () => void;
}

export function batchedLines(write: (text: string) => void): BatchedLines {
  let waiting: string[] = [];
  const flush = (): void => {
    if (waiting.length === 0) return;
    const text = `${waiting.join("\n")}\n`;
    waiting = [];
    write(text);
  };
  const log = (line: string): void => {
    if (waiting.push(line) === 1) setImmediate(flush);
  };
  return { log, flush };
}
