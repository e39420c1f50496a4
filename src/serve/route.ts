import { timingSafeEqual } from "node:crypto";
import { isIP } from "node:net";

export type Route =
  | { readonly to: "calendar" | "page"; readonly garden: string }
  | { readonly to: "index" }
  | { readonly to: "writing"; readonly place: WritePlace }
  | { readonly to: "nowhere" };

/** Below the secret of those who write. */
export type WritePlace =
  | { readonly to: "tick page" | "file page" | "file"; readonly garden: string }
  | { readonly to: "asset"; readonly name: string }
  | { readonly to: "write index" | "service worker" | "manifest" };

/**
 * What guards the gardens: on loopback the Host header, elsewhere the secret first path segment. Who
 * writes needs a secret of its own everywhere.
 */
export type Guard = { readonly writeSecret?: string } & (
  { readonly kind: "loopback" } | { readonly kind: "secret"; readonly secret: string }
);

const nowhere: Route = { to: "nowhere" };

/**
 * Where a request target leads. A garden's name comes back as asked for: whether there is one is
 * looked up in a table, never in a file system. A query is ignored, as some clients add one.
 *
 * @param target origin form or absolute form (RFC 9112 section 3.2)
 */
export function routeOf(target: string, host: string | undefined, guard: Guard): Route {
  const absolute = /^https?:\/\/([^/?#]*)/i.exec(target);
  const own = absolute ? target.slice(absolute[0].length) || "/" : target;
  const path = own.replace(/[?#].*$/s, "");
  const isLocal = guard.kind === "loopback";
  if (isLocal && !namesLoopback(absolute ? absolute[1] : host)) return nowhere;
  const end = path.indexOf("/", 1);
  const given = end === -1 ? path.slice(1) : path.slice(1, end);
  const { writeSecret } = guard;
  const mayWrite = writeSecret !== undefined && sameSecret(given, writeSecret);
  if (mayWrite && end !== -1) {
    const place = writePlaceOf(path.slice(end));
    return place === undefined ? nowhere : { to: "writing", place };
  }
  if (isLocal) return placeOf(path, true);
  if (!sameSecret(given, guard.secret) || end === -1) return nowhere;
  return placeOf(path.slice(end), false);
}

/** Of a folder of some thousand gardens, a calendar and a page each. */
const mostKnown = 4096;

/**
 * `routeOf`, remembered for what leads to a garden. Only who knows the secret gets anything in here; a
 * table compares a text only where its hash is the same, so time tells nothing of the secret either.
 */
export function router(guard: Guard): (target: string, host: string | undefined) => Route {
  const known = new Map<string, { readonly host: string | undefined; readonly route: Route }>();
  return (target, host) => {
    const found = known.get(target);
    if (found !== undefined && found.host === host) return found.route;
    const route = routeOf(target, host, guard);
    if (route.to === "calendar" || route.to === "page") {
      if (known.size >= mostKnown) known.clear();
      known.set(target, { host, route });
    }
    return route;
  };
}

function writePlaceOf(path: string): WritePlace | undefined {
  if (path === "/") return { to: "write index" };
  if (path === "/service-worker.js") return { to: "service worker" };
  if (path === "/manifest.webmanifest") return { to: "manifest" };
  if (path.startsWith("/-/")) return { to: "asset", name: path.slice(3) };
  const match = /^\/([a-z0-9-]+)(\/file(\.yaml)?)?$/.exec(path);
  if (match?.[1] === undefined) return undefined;
  const [, garden, file, ending] = match;
  if (file === undefined) return { to: "tick page", garden };
  return { to: ending === undefined ? "file page" : "file", garden };
}

function placeOf(path: string, withIndex: boolean): Route {
  if (path === "/") return withIndex ? { to: "index" } : nowhere;
  const match = /^\/([a-z0-9-]+)(\.ics)?$/.exec(path);
  if (match?.[1] === undefined) return nowhere;
  return { to: match[2] === undefined ? "page" : "calendar", garden: match[1] };
}

/** Takes as long for any text of whatever length. */
export function sameSecret(given: string, secret: string): boolean {
  const wanted = Buffer.from(secret);
  const bytes = Buffer.alloc(wanted.length);
  bytes.write(given);
  return timingSafeEqual(bytes, wanted) && given.length === secret.length;
}

/** Whether an IP address can be reached from this computer only. */
export function isLoopback(address: string): boolean {
  const ip = address.toLowerCase().replace(/^::ffff:(?=\d+\.)/, "");
  return ip === "::1" || (isIP(ip) === 4 && ip.startsWith("127."));
}

/**
 * Whether a Host header names this computer. A page elsewhere can point its own name at 127.0.0.1 and
 * read what answers there (DNS rebinding); its name in the header gives it away. No header: no browser.
 */
export function namesLoopback(host: string | undefined): boolean {
  if (host === undefined) return true;
  const match = /^(?:\[([0-9a-f:.]+)\]|([^:[\]]+))(?::\d*)?$/i.exec(host);
  const name = match?.[1] ?? match?.[2];
  if (name === undefined) return false;
  return name.toLowerCase() === "localhost" || isLoopback(name);
}
