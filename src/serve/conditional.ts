import { parseHttpDate } from "./http-date.js";

export interface Conditions {
  readonly ifNoneMatch?: string | undefined;
  readonly ifModifiedSince?: string | undefined;
}

const entityTag = /^[ \t,]*(?:W\/)?("[\x21\x23-\x7e\x80-\xff]*")[ \t]*(?=,|$)/;

/**
 * Whether a GET or HEAD is answered by 304 (RFC 9110 section 13.2.2): If-None-Match by weak
 * comparison, and only without it If-Modified-Since.
 */
export function isUnchanged(
  asked: Conditions,
  now: { readonly etag: string; readonly modifiedS: number; readonly nowS: number },
): boolean {
  if (asked.ifNoneMatch !== undefined) return matchesTag(asked.ifNoneMatch, now.etag);
  if (asked.ifModifiedSince === undefined) return false;
  const since = parseHttpDate(asked.ifModifiedSince, now.nowS);
  return since !== undefined && now.modifiedS <= since;
}

function matchesTag(field: string, etag: string): boolean {
  if (field === etag) return true;
  if (field.trim() === "*") return true;
  let rest = field;
  for (let tag = entityTag.exec(rest); tag !== null; tag = entityTag.exec(rest)) {
    if (tag[1] === etag) return true;
    rest = rest.slice(tag[0].length);
  }
  return false;
}

/**
 * The second for Last-Modified when content changes: each change has a later one, even two changes
 * within a second or a clock set back, so that If-Modified-Since never hides a change.
 */
export function nextModifiedS(earlierS: number | undefined, nowMs: number): number {
  const nowS = Math.floor(nowMs / 1000);
  return earlierS === undefined ? nowS : Math.max(nowS, earlierS + 1);
}
