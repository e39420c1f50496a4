import { httpDate } from "./http-date.js";
import {
  cacheHeaders,
  type Coding,
  contentHeaders,
  type Inflate,
  type Representation,
} from "./representation.js";
import { acceptsGzip, type Asked, isUnchanged } from "./request-fields.js";

/**
 * An answer, whole, before any socket. `headers` are name, value, name, value: as objects they
 * would cost a fifth of the answers under load.
 */
export interface Reply {
  readonly status: 200 | 304 | 404 | 405 | 500 | 503;
  readonly headers: readonly string[];
  readonly body?: Buffer;
}

/** 200, or 304 when the reader has it already. */
export function replyWith(
  shown: Representation,
  asked: Asked,
  nowMs: number,
  inflate: Inflate,
): Reply {
  const coding: Coding = acceptsGzip(asked["accept-encoding"]?.toString()) ? "gzip" : "identity";
  const { headers, modifiedS, lastModified } = shown;
  const etag = shown.etags[coding];
  const nowS = Math.floor(nowMs / 1000);
  // Never later than the answer itself (RFC 9110 section 8.8.2.1).
  const modified = modifiedS <= nowS ? lastModified : httpDate(nowS);
  if (isUnchanged(asked, { etag, modifiedS, nowS })) {
    return { status: 304, headers: ["ETag", etag, "Last-Modified", modified, ...cacheHeaders] };
  }
  const body = coding === "gzip" ? shown.gzip : inflate(shown);
  return {
    status: 200,
    headers: [
      ...headers,
      ...["ETag", etag, "Last-Modified", modified],
      ...(coding === "gzip" ? ["Content-Encoding", "gzip"] : []),
      ...["Content-Length", String(body.length)],
    ],
    body,
  };
}

/** The same for an address that never was, a garden that is gone, and a wrong secret. */
export const notFound: Reply = said(404, "There is nothing here.\n");

export const onlyReading: Reply = said(405, "Only GET and HEAD.\n", ["Allow", "GET, HEAD"]);

/** The garden has a problem and there is no earlier calendar: an empty one would delete all events. */
export const noCalendarYet: Reply = said(
  503,
  "This garden has no calendar yet; its page says why.\n",
  ["Retry-After", "60"],
);

/** A bug of ours; the log has it. */
export const ourFault: Reply = said(500, "Something went wrong here.\n");

function said(status: 404 | 405 | 500 | 503, text: string, more: readonly string[] = []): Reply {
  const body = Buffer.from(text);
  const headers = [...contentHeaders("plain"), "Content-Length", String(body.length), ...more];
  return { status, headers, body };
}
