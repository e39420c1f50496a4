import { lookup } from "node:dns/promises";
import type { IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import { resolve } from "node:path";
import type { Result } from "../problem.js";
import { given } from "../values.js";
import { gardenFolder, type GardenFolder } from "./garden-folder.js";
import { asksNow, loaded, pageOf, type ShowContext, wasRead } from "./garden-show.js";
import { type Answer, httpServer, type Limits, stopServer, usualLimits } from "./http-server.js";
import { originOf, reachableAddresses, subscribeLinks, type SubscribeLinks } from "./links.js";
import { indexPage } from "./plain-page.js";
import { qrSvg } from "./qr.js";
import { noCalendarYet, notFound, replyWith } from "./reply.js";
import { inflater, renewed, type Representation } from "./representation.js";
import { type Guard, isLoopback, routeOf } from "./route.js";
import { keptSecret } from "./secret.js";
import { attempt, type Trouble } from "./system-trouble.js";

export interface ServeOptions extends Pick<ShowContext, "source" | "stateDir" | "pause"> {
  /** Garden files, and folders of them. */
  readonly gardens: readonly string[];
  /** A line for each request, problem and change; none holds the secret. */
  readonly log: (line: string) => void;
  /** Loopback unless given; any other address puts the gardens behind a secret path segment. */
  readonly host?: string;
  /** Any free one unless given. */
  readonly port?: number;
  readonly nowMs?: () => number;
  readonly limits?: Partial<Limits>;
  /** From one look at the files to the next. */
  readonly lookMs?: number;
}

export interface GardenServer {
  /** `http://address:port` at which it can be reached, the first of them in the links. */
  readonly origins: readonly string[];
  readonly isLoopback: boolean;
  /** Links to each garden there is now, by name; with the secret. */
  readonly links: () => readonly (SubscribeLinks & { readonly title: string })[];
  /** Fulfilled once each garden has been read; until then a request for one has it read first. */
  readonly ready: Promise<void>;
  /** Ends all connections and the watch. Safe to call twice. */
  readonly stop: () => Promise<void>;
}

/** Uncompressed bytes at hand for clients without gzip. */
const inflatedBytes = 16_000_000;

/** Trouble: a path, the address, the port or the state folder can't be used. */
export async function serveGardens(options: ServeOptions): Promise<Result<GardenServer, Trouble>> {
  const { log, stateDir, source, nowMs = Date.now, port = 0 } = options;
  const limits = { ...usualLimits, ...options.limits };
  const { host = "127.0.0.1" } = options;
  // Looked up first, so that "loopback" is said of the address itself and not of a name for it.
  const found = await attempt(`the address ${host}`, () =>
    lookup(host.replace(/^\[(.*)\]$/, "$1")),
  );
  if (!found.ok) return found;
  const { address } = found.value;
  const guard = await guardFor(address, stateDir, log);
  if (!guard.ok) return guard;

  let base = "";
  const linksTo = (name: string): SubscribeLinks => {
    const links = subscribeLinks(base, name);
    if (guard.value.kind === "loopback") return links;
    return { ...links, qrSvg: qrSvg(links.page, "QR code of this page") };
  };
  const { pause } = options;
  const context = { source, stateDir, nowMs, linksTo, ...given({ pause }) };
  const roots = options.gardens.map((path) => resolve(path));
  const folder = await gardenFolder(roots, context, log, options.lookMs);
  if (!folder.ok) return folder;

  const answer = answering(folder.value, context, guard.value, log);
  const server = httpServer({ answer, log, nowMs }, limits);
  const listening = await attempt(`${address}, port ${port},`, async () => {
    await new Promise<void>((done, failed) => {
      server.once("error", failed).listen({ host: address, port }, done);
    });
    return server.address() as AddressInfo;
  });
  if (!listening.ok) return listening;
  const origins = reachableAddresses(address).map((a) => originOf(a, listening.value.port));
  base = [origins[0], ...(guard.value.kind === "secret" ? [guard.value.secret] : [])].join("/");
  folder.value.start();

  let stopped: Promise<void> | undefined;
  return {
    ok: true,
    value: {
      origins,
      isLoopback: guard.value.kind === "loopback",
      links: () => folder.value.shows().map(({ name, title }) => ({ ...linksTo(name), title })),
      ready: folder.value.ready,
      stop: () =>
        (stopped ??= Promise.all([stopServer(server, limits), folder.value.stop()]).then(() => {})),
    },
  };
}

function answering(
  folder: GardenFolder,
  context: ShowContext,
  guard: Guard,
  log: (line: string) => void,
): (request: IncomingMessage) => Promise<Answer> {
  const inflate = inflater(inflatedBytes);
  let index: Representation | undefined;
  return async (request) => {
    const route = routeOf(request.url ?? "/", request.headers.host, guard);
    const nowMs = context.nowMs();
    if (route.to === "nowhere") return { reply: notFound, what: "-" };
    if (route.to === "index") {
      index = renewed(index, indexOf(folder, nowMs), nowMs);
      return { reply: replyWith(index, request.headers, nowMs, inflate), what: "the index" };
    }
    const show = folder.named(route.garden);
    if (show === undefined) return { reply: notFound, what: "-" };
    const isCalendar = route.to === "calendar";
    const what = isCalendar ? `${show.name}.ics` : show.name;
    if (show.good === undefined && !wasRead(show)) (await loaded(show, context)).forEach(log);
    const shown = isCalendar ? show.good?.calendar : pageOf(show, context);
    const reply = shown ? replyWith(shown, request.headers, nowMs, inflate) : noCalendarYet;
    return { reply, what };
  };
}

function indexOf(folder: GardenFolder, nowMs: number): string {
  return indexPage(
    folder.shows().map((show) => ({
      title: show.title === "" ? show.name : show.title,
      page: show.name,
      calendar: `${show.name}.ics`,
      hasProblems: show.problems.length > 0,
      ...given({ asks: asksNow(show, nowMs) }),
    })),
  );
}

async function guardFor(
  address: string,
  stateDir: string,
  log: (line: string) => void,
): Promise<Result<Guard, Trouble>> {
  if (isLoopback(address)) return { ok: true, value: { kind: "loopback" } };
  const secret = await keptSecret(stateDir);
  if (!secret.ok) return secret;
  if (secret.value.notice !== undefined) log(secret.value.notice);
  return { ok: true, value: { kind: "secret", secret: secret.value.secret } };
}
