import type { IncomingHttpHeaders } from "node:http";
import { remembering } from "../values.js";
import { parseHttpDate } from "./http-date.js";

/** Header fields of a request that decide an answer. */
export type Asked = Pick<
  IncomingHttpHeaders,
  "accept-encoding" | "if-none-match" | "if-modified-since"
>;

const entityTag = /^[ \t,]*(?:W\/)?("[\x21\x23-\x7e\x80-\xff]*")[ \t]*(?=,|$)/;

/**
 * Whether a GET or HEAD is answered by 304 (RFC 9110 section 13.2.2): If-None-Match by weak
 * comparison, and only without it If-Modified-Since.
 */
export function isUnchanged(
  { "if-none-match": tags, "if-modified-since": date }: Asked,
  now: { readonly etag: string; readonly modifiedS: number; readonly nowS: number },
): boolean {
  if (tags !== undefined) return matchesTag(tags, now.etag);
  const since = date === undefined ? undefined : parseHttpDate(date, now.nowS);
  return since !== undefined && now.modifiedS <= since;
}

function matchesTag(field: string, etag: string): boolean {
  if (field === etag || field.trim() === "*") return true;
  let rest = field;
  for (let tag = entityTag.exec(rest); tag !== null; tag = entityTag.exec(rest)) {
    if (tag[1] === etag) return true;
    rest = rest.slice(tag[0].length);
  }
  return false;
}

/** Whether Accept-Encoding asks for gzip, at least as much as for no coding (RFC 9110 section 12.5.3). */
export function acceptsGzip(field = ""): boolean {
  return wantsGzip(field);
}

/** Programs say the same each time, and there are few of them. */
const wantsGzip = remembering(
  100,
  (field: string) => field,
  (field) => {
    const gzip = weightIn(field, gzipOrAlias) ?? weightIn(field, anyCoding) ?? 0;
    return gzip > 0 && gzip >= (weightIn(field, identity) ?? 0);
  },
);

const gzipOrAlias = weighed("(?:x-)?gzip");
const anyCoding = weighed("\\*");
const identity = weighed("identity");

/** A coding in a list, and the `q` beside it. */
function weighed(coding: string): RegExp {
  return new RegExp(
    `(?:^|,)[ \\t]*${coding}(?:[ \\t]*;[ \\t]*q=([\\d.]+)|[ \\t]*;[^,]*)?[ \\t]*(?:,|$)`,
    "i",
  );
}

function weightIn(field: string, coding: RegExp): number | undefined {
  const match = coding.exec(field);
  return match ? Number(match[1] ?? 1) : undefined;
}
