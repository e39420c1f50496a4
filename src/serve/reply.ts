import { gzipSync } from "node:zlib";
import { httpDate } from "./http-date.js";
import {
  type Coding,
  contentHeaders,
  type ContentKind,
  type Inflate,
  type Representation,
  writingHeaders,
} from "./representation.js";
import { acceptsGzip, type Asked, isUnchanged } from "./request-fields.js";

type Status = 200 | 303 | 304 | 400 | 403 | 404 | 405 | 409 | 413 | 415 | 422 | 429 | 500 | 503;

/**
 * An answer, whole, before any socket. `headers` are name, value, name, value: as objects they
 * would cost a fifth of the answers under load.
 */
export interface Reply {
  readonly status: Status;
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
  const { modifiedS } = shown;
  const { etag, whole, unchanged } = shown.coded[coding];
  const nowS = Math.floor(nowMs / 1000);
  if (isUnchanged(asked, { etag, modifiedS, nowS }))
    return { status: 304, headers: datedBy(nowS, modifiedS, unchanged) };
  const body = coding === "gzip" ? shown.gzip : inflate(shown);
  return { status: 200, headers: datedBy(nowS, modifiedS, whole), body };
}

/** Last-Modified is never later than the answer itself (RFC 9110 section 8.8.2.1). */
function datedBy(nowS: number, modifiedS: number, headers: readonly string[]): readonly string[] {
  if (modifiedS <= nowS) return headers;
  return headers.with(headers.indexOf("Last-Modified") + 1, httpDate(nowS));
}

/** The same for an address that never was, a garden that is gone, and a wrong secret. */
export const notFound: Reply = said(404, "There is nothing here.\n");

/** Which one is meant is for nobody to guess (RFC 9112 section 3.2). */
export const twoHosts: Reply = said(400, "One Host, please.\n");

export const onlyReading: Reply = said(405, "Only GET and HEAD.\n", ["Allow", "GET, HEAD"]);

/** The garden has a problem and there is no earlier calendar: an empty one would delete all events. */
export const noCalendarYet: Reply = said(
  503,
  "This garden has no calendar yet; its page says why.\n",
  ["Retry-After", "60"],
);

/** A bug of ours; the log has it. */
export const ourFault: Reply = said(500, "Something went wrong here.\n");

const nothingWritten = "so nothing was written.\n";

export const notOurs: Reply = said(
  403,
  `This was not sent by a page of this server, ${nothingWritten}Open the link that the server printed when it started, and send it from there.\n`,
);

export const notUrlencoded: Reply = said(
  415,
  `This is not a form of this server's pages, ${nothingWritten}`,
);

export const noForm: Reply = said(
  400,
  `The form came without its id or broken, ${nothingWritten}Load the page again.\n`,
);

export const tooLarge: Reply = said(413, `This is too large, ${nothingWritten}`);

export function tooOften(waitS: number): Reply {
  const text = `Too much came from one address, ${nothingWritten}Wait a minute.\n`;
  return said(429, text, ["Retry-After", String(waitS)]);
}

export const notNow: Reply = said(
  503,
  `Another program is writing just now, ${nothingWritten}Send it again.\n`,
  ["Retry-After", "5"],
);

export const noFilePage: Reply = said(
  404,
  "The page on which a garden file is written is not part of this installation.\n",
);

export const fileAway: Reply = said(
  503,
  "The garden file can't be read just now, or is no UTF-8 text.\n",
  [...["Retry-After", "5"]],
);

/** To a page of this server, by a relative address. */
export function seeOther(location: string): Reply {
  return said(303, "See the page.\n", ["Location", location]);
}

/** What those who write are shown, as it is now: it is never answered by 304 and nowhere kept. */
export function unkept(
  status: 200 | 409 | 422,
  kind: ContentKind,
  content: string | Buffer,
  asked: Asked,
  policy?: string,
): Reply {
  const headers = writingHeaders(kind, policy);
  const bytes = Buffer.from(content);
  const isPacked = acceptsGzip(asked["accept-encoding"]?.toString());
  const body = isPacked ? gzipSync(bytes) : bytes;
  if (isPacked) headers.push("Content-Encoding", "gzip");
  return { status, headers: [...headers, "Content-Length", String(body.length)], body };
}

function said(status: Status, text: string, more: readonly string[] = []): Reply {
  const body = Buffer.from(text);
  const headers = [...contentHeaders("plain"), "Content-Length", String(body.length), ...more];
  return { status, headers, body };
}
