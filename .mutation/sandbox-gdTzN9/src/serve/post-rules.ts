/** Which POST is taken at all: one that a page of this server sent, as the browser says itself. */
// @ts-nocheck

import type { IncomingMessage } from "node:http";
import { notOurs, notUrlencoded, type Reply } from "./reply.js";

/** Where the server's own pages come from. */
export interface OwnOrigins {
  /** As the server itself speaks. */
  readonly scheme: "http" | "https";
  /** `https://host` of a proxy in front: then it alone, whatever Host the proxy asks for. */
  readonly publicOrigin?: string;
}

const urlencoded = /^application\/x-www-form-urlencoded[ \t]*(?:;[ \t]*charset="?utf-8"?[ \t]*)?$/i;

/**
 * Undefined where a POST may go on. Its Origin (Fetch standard, section 3.2) must be the address that
 * was asked, or the one told for a proxy in front; a header that comes twice is refused.
 */
export function refusalOfPost(request: IncomingMessage, own: OwnOrigins): Reply | undefined {
  const { headersDistinct: sent } = request;
  const [host, origin] = [sent.host ?? [], sent.origin ?? []];
  const site = sent["sec-fetch-site"] ?? ["same-origin"];
  if (host.length !== 1 || origin.length !== 1 || site.join() !== "same-origin") return notOurs;
  const ours = own.publicOrigin ?? `${own.scheme}://${host.join().toLowerCase()}`;
  // So is what no browser sends of a page: "null" above all.
  if (origin.join() !== ours) return notOurs;
  const type = (sent["content-type"] ?? []).join();
  if (!urlencoded.test(type) || sent["content-encoding"] !== undefined) return notUrlencoded;
  return undefined;
}
