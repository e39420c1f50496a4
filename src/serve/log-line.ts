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
