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

// Most lines of a busy server are of the same second.
let last = { second: NaN, text: "" };

function secondText(atMs: number): string {
  const second = Math.floor(atMs / 1000);
  if (second !== last.second) {
    last = { second, text: new Date(second * 1000).toISOString().replace(".000", "") };
  }
  return last.text;
}
