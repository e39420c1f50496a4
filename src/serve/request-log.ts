import { secondText } from "../second.js";

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
  return `${secondText(atMs)} ${address} ${method} ${what} ${status} ${bytes} B ${took} ms`;
}

/** What only a bug of ours throws. */
export function bugLine(error: unknown): string {
  return `bug: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
}

/** Lines that are written together, a moment later: a write each is felt under load. */
export interface BatchedLines {
  readonly log: (line: string) => void;
  /** The same for the line of a request: none where the file that they go to is full. */
  readonly logRequest: (line: string) => void;
  /** Writes what is still waiting; before the program ends. */
  readonly flush: () => void;
}

/** Our choice: nobody who watches a terminal feels it. */
const momentMs = 50;
/** Our choice: some hundred thousand requests. Anybody at all can make them. */
const mostLogBytes = 10_000_000;

interface Batching {
  /** Calls back in a moment; a timer unless given. */
  readonly later?: (flush: () => void) => unknown;
  /** Of the file that is written into, if it is one; looked at for each batch. */
  readonly sizeBytes?: () => number;
}

export function batchedLines(
  write: (text: string) => void,
  { later = (flush) => setTimeout(flush, momentMs), sizeBytes = () => 0 }: Batching = {},
): BatchedLines {
  let waiting = "";
  let isFull = false;
  const flush = (): void => {
    if (waiting === "") return;
    const text = waiting;
    waiting = "";
    write(text);
  };
  const log = (line: string): void => {
    if (waiting === "") later(flush);
    waiting += `${line}\n`;
  };
  const logRequest = (line: string): void => {
    if (waiting === "") {
      const wasFull = isFull;
      isFull = sizeBytes() >= mostLogBytes;
      if (isFull && !wasFull) log(fullLine);
    }
    if (!isFull) log(line);
  };
  return { log, logRequest, flush };
}

const fullLine = `this file has ${mostLogBytes / 1_000_000} MB: requests are told of again once it is smaller`;
