import { createHash } from "node:crypto";
import { gunzipSync, gzipSync } from "node:zlib";
import { httpDate } from "./http-date.js";
import {
  nothingAllowed,
  pagePolicy,
  securityHeaders,
  writingSecurityHeaders,
} from "./security-headers.js";

export type Coding = "gzip" | "identity";

/** What one address answers until its content changes. Only the compressed bytes are kept. */
export interface Representation {
  /** SHA-256 of the content, base64url, 132 bits. */
  readonly hash: string;
  /** Seconds since 1970; see `nextModifiedS`. */
  readonly modifiedS: number;
  readonly gzip: Buffer;
  readonly coded: Readonly<Record<Coding, Coded>>;
}

/** What goes before the bytes in one coding, made once: headers are felt under load. */
export interface Coded {
  /** Strong, so another one for each coding (RFC 9110 section 8.8.3.3). */
  readonly etag: string;
  /** Headers of a 200: name, value, name, value. */
  readonly whole: readonly string[];
  /** Those of a 304. */
  readonly unchanged: readonly string[];
}

const types = {
  calendar: "text/calendar; charset=utf-8",
  page: "text/html; charset=utf-8",
  plain: "text/plain; charset=utf-8",
  yaml: "application/yaml; charset=utf-8",
  json: "application/json",
  manifest: "application/manifest+json",
  script: "text/javascript; charset=utf-8",
  style: "text/css; charset=utf-8",
  png: "image/png",
  svg: "image/svg+xml",
  font: "font/woff2",
  bytes: "application/octet-stream",
} as const;

export type ContentKind = keyof typeof types;

/** Kept by the reader's program only, and asked for again each time (RFC 9111 section 5.2.2). */
const cacheHeaders: readonly string[] = [
  ...["Cache-Control", "private, no-cache"],
  ...["Vary", "Accept-Encoding"],
];

export function contentHeaders(kind: ContentKind, policy = nothingAllowed): string[] {
  const headers = ["Content-Type", types[kind], "Content-Security-Policy", policy];
  return [...headers, ...cacheHeaders, ...securityHeaders];
}

/**
 * For pages that write and what goes with them. Their forms have ids of their own, and going back in a
 * browser must not show an old state: so nothing is kept but by the page's own script, which may keep
 * it all the same (Service Workers, section 5.4: a Cache does not look at these headers).
 */
export function writingHeaders(kind: ContentKind, policy = nothingAllowed): string[] {
  const headers = ["Content-Type", types[kind], "Content-Security-Policy", policy];
  const cache = ["Cache-Control", "no-store", "Vary", "Accept-Encoding"];
  return [...headers, ...cache, ...writingSecurityHeaders];
}

export function contentHash(content: string | Buffer): string {
  return createHash("sha256").update(content).digest("base64url").slice(0, 22);
}

export function representation(
  kind: ContentKind,
  content: string | Buffer,
  modifiedS: number,
  policy = kind === "page" ? pagePolicy(content.toString()) : nothingAllowed,
): Representation {
  return shownAs(kind, packed(content), modifiedS, policy);
}

/** A content as it is kept. */
export interface Packed {
  readonly hash: string;
  readonly gzip: Uint8Array;
}

export function packed(content: string | Buffer): Packed {
  return { hash: contentHash(content), gzip: gzipSync(content) };
}

export function shownAs(
  kind: ContentKind,
  { hash, gzip }: Packed,
  modifiedS: number,
  policy = nothingAllowed,
): Representation {
  const bytes = Buffer.from(gzip.buffer, gzip.byteOffset, gzip.byteLength);
  // RFC 1952 section 2.3.1: ISIZE, the last four bytes.
  const contentBytes = bytes.readUInt32LE(bytes.length - 4);
  const modified = ["Last-Modified", httpDate(modifiedS)];
  const coded = (etag: string, length: number, coding: readonly string[]): Coded => {
    const told = ["ETag", etag, ...modified];
    const rest = [...coding, "Content-Length", String(length)];
    return {
      etag,
      whole: [...contentHeaders(kind, policy), ...told, ...rest],
      unchanged: [...told, ...cacheHeaders],
    };
  };
  return {
    ...{ hash, modifiedS, gzip: bytes },
    coded: {
      gzip: coded(`"${hash}-gzip"`, bytes.length, ["Content-Encoding", "gzip"]),
      identity: coded(`"${hash}"`, contentBytes, []),
    },
  };
}

/** A page as it is now: the one there was, when nothing in it has changed. */
export function renewed(
  last: Representation | undefined,
  content: string,
  nowMs: number,
): Representation {
  if (last?.hash === contentHash(content)) return last;
  return representation("page", content, nextModifiedS(last?.modifiedS, nowMs));
}

/**
 * The second for Last-Modified when content changes: each change has a later one, even two changes
 * within a second or a clock set back, so that If-Modified-Since never hides a change.
 */
export function nextModifiedS(earlierS: number | undefined, nowMs: number): number {
  const nowS = Math.floor(nowMs / 1000);
  return earlierS === undefined ? nowS : Math.max(nowS, earlierS + 1);
}

export type Inflate = (shown: Representation) => Buffer;

/** Uncompressed bytes, the last used ones kept up to a number of bytes. */
export function inflater(keepBytes: number): Inflate {
  const kept = new Map<Representation, Buffer>();
  let sum = 0;
  let newest: { readonly shown: Representation; readonly bytes: Buffer } | undefined;
  return (shown) => {
    if (newest?.shown === shown) return newest.bytes;
    const found = kept.get(shown);
    const bytes = found ?? gunzipSync(shown.gzip);
    if (found) kept.delete(shown);
    else sum += bytes.length;
    kept.set(shown, bytes);
    for (const [oldest, { length }] of kept) {
      if (sum <= keepBytes) break;
      kept.delete(oldest);
      sum -= length;
    }
    newest = kept.has(shown) ? { shown, bytes } : undefined;
    return bytes;
  };
}
