import { lookup } from "node:dns/promises";
import { Server as TlsServer } from "node:https";
import type { AddressInfo } from "node:net";
import { resolve } from "node:path";
import type { Day } from "../dates.js";
import type { Result } from "../problem.js";
import { given } from "../values.js";
import { answering } from "./answering.js";
import { type CertificateFiles, followCertificate, readCertificate } from "./certificate.js";
import { gardenFolder } from "./garden-folder.js";
import { gardenReader } from "./garden-reader.js";
import type { ShowContext } from "./garden-show.js";
import type { GardenSource } from "./garden-source.js";
import {
  type Certificate,
  httpServer,
  type Limits,
  stopServer,
  usualLimits,
} from "./http-server.js";
import { originOf, reachableAddresses, subscribeLinks, type SubscribeLinks } from "./links.js";
import { qrSvg } from "./qr.js";
import { rateLimit } from "./rate-limit.js";
import { type Guard, isLoopback } from "./route.js";
import { keptSecret, type SecretName } from "./secret.js";
import { attempt, type Trouble } from "./system-trouble.js";
import type { Now } from "./today.js";
import { readWebFiles } from "./web-files.js";
import type { WorkerStart } from "./worker-pool.js";
import { realPages, type Writing } from "./write-context.js";

export interface ServeOptions extends Pick<ShowContext, "stateDir" | "pause"> {
  readonly source: GardenSource;
  /** For many gardens; without it all are read in this thread. */
  readonly threads?: WorkerStart;
  /** Garden files, and folders of them. */
  readonly gardens: readonly string[];
  /** A line for each request, problem and change; none holds a secret. */
  readonly log: (line: string) => void;
  /** Takes those of requests, where they go elsewhere. */
  readonly logRequest?: (line: string) => void;
  /** Loopback unless given; any other address puts the gardens behind a secret path segment. */
  readonly host?: string;
  /** Any free one unless given. */
  readonly port?: number;
  /** Address of a proxy in front, for links: then the gardens are behind the secret on loopback, too. */
  readonly url?: string;
  /** With these the server speaks https. */
  readonly certificate?: CertificateFiles;
  /** Gardens can be written into, behind a secret of its own; without it never. */
  readonly writing?: Writing;
  readonly nowMs?: () => number;
  /** Gardens are planned from this day all the time, instead of the clock's. */
  readonly today?: Day;
  readonly limits?: Partial<Limits>;
  /** From one look at the files to the next. */
  readonly lookMs?: number;
  /** The same for those of the certificate. */
  readonly renewMs?: number;
}

export interface GardenServer {
  /** `http://address:port` at which it can be reached, the first of them in the links. */
  readonly origins: readonly string[];
  /** Address of the proxy in front, which then is in the links. */
  readonly url?: string;
  readonly isLoopback: boolean;
  /** Links to each garden there is now, by name; with the secret. */
  readonly links: () => readonly (SubscribeLinks & { readonly title: string })[];
  /** Where the gardens are written into, for the terminal alone. */
  readonly writeLink?: string;
  /** Fulfilled once each garden has been read; until then a request for one has it read first. */
  readonly ready: Promise<void>;
  /** Ends all connections and the watch. Safe to call twice. */
  readonly stop: () => Promise<void>;
}

/** Trouble: a path, the address, the port, the certificate or the state folder can't be used. */
export async function serveGardens(options: ServeOptions): Promise<Result<GardenServer, Trouble>> {
  const {
    log,
    logRequest = log,
    stateDir,
    source,
    certificate,
    nowMs = Date.now,
    port = 0,
  } = options;
  const url = options.url?.replace(/\/+$/, "");
  const limits = {
    ...usualLimits,
    // A proxy in front has one address for all visitors: how many each may have is its work then.
    ...(url === undefined ? {} : { connectionsEach: usualLimits.connections }),
    ...options.limits,
  };
  const { host = "127.0.0.1" } = options;
  // Looked up first, so that "loopback" is said of the address itself and not of a name for it.
  const found = await attempt(`the address ${host}`, () =>
    lookup(host.replace(/^\[(.*)\]$/, "$1")),
  );
  if (!found.ok) return found;
  const { address } = found.value;
  const tls = certificate && (await readCertificate(certificate));
  if (tls?.ok === false) return tls;
  const guard = await guardFor(isLoopback(address) && url === undefined, options);
  if (!guard.ok) return guard;

  let base = "";
  const linksTo = (name: string): SubscribeLinks => {
    const links = subscribeLinks(base, name);
    if (guard.value.kind === "loopback") return links;
    return { ...links, qrSvg: qrSvg(links.page, "QR code of this page") };
  };
  const now = (): Now => ({ nowMs: nowMs(), ...given({ today: options.today }) });
  const reader = gardenReader(source, options.threads);
  const context = { source, reader, stateDir, now, linksTo, ...given({ pause: options.pause }) };
  const roots = options.gardens.map((path) => resolve(path));
  const folder = await gardenFolder(roots, context, log, options.lookMs);
  if (!folder.ok) return folder;
  const scheme = tls ? "https" : "http";
  const webDir = options.writing?.webDir;
  const web = await attempt(String(webDir), () => readWebFiles(webDir, nowMs()));
  if (!web.ok) return web;
  const writing = options.writing && {
    ...{ ...context, folder: folder.value, log, rate: rateLimit(), web: web.value },
    ...{ writer: options.writing.writer, pages: options.writing.pages ?? realPages },
    own: { scheme, ...given({ publicOrigin: url && new URL(url).origin }) } as const,
  };

  const answers = answering({ folder: folder.value, context, guard: guard.value, writing });
  const server = httpServer({ ...answers, log: logRequest, nowMs }, limits, tls?.value);
  const listening = await attempt(`${address}, port ${port},`, async () => {
    await new Promise<void>((done, failed) => {
      server.once("error", failed).listen({ host: address, port }, done);
    });
    return server.address() as AddressInfo;
  });
  if (!listening.ok) return listening;
  const origins = reachableAddresses(address).map((a) => originOf(scheme, a, listening.value.port));
  const shown = url ?? origins[0] ?? "";
  const { writeSecret, ...reading } = guard.value;
  base = [shown, ...(reading.kind === "secret" ? [reading.secret] : [])].join("/");
  const writeLink = writeSecret && `${shown}/${writeSecret}/`;
  folder.value.start();
  const renew = (renewed: Certificate): void => {
    if (server instanceof TlsServer) server.setSecureContext(renewed);
  };
  const unfollow = certificate && followCertificate(certificate, renew, log, options.renewMs);

  let stopped: Promise<void> | undefined;
  const stop = async (): Promise<void> => {
    unfollow?.();
    await Promise.all([stopServer(server, limits), folder.value.stop()]);
  };
  return {
    ok: true,
    value: {
      ...{ origins, isLoopback: reading.kind === "loopback", ...given({ url, writeLink }) },
      links: () => folder.value.shows().map(({ name, title }) => ({ ...linksTo(name), title })),
      ready: folder.value.ready,
      stop: () => (stopped ??= stop()),
    },
  };
}

async function guardFor(
  isOwn: boolean,
  { stateDir, writing, log }: ServeOptions,
): Promise<Result<Guard, Trouble>> {
  const secretFor = async (name: SecretName): Promise<Result<string, Trouble>> => {
    const kept = await keptSecret(stateDir, name);
    if (!kept.ok) return kept;
    if (kept.value.notice !== undefined) log(kept.value.notice);
    return { ok: true, value: kept.value.secret };
  };
  const write = writing && (await secretFor("write-secret"));
  if (write?.ok === false) return write;
  const forWriting = given({ writeSecret: write?.value });
  if (isOwn) return { ok: true, value: { kind: "loopback", ...forWriting } };
  const secret = await secretFor("secret");
  if (!secret.ok) return secret;
  return { ok: true, value: { kind: "secret", secret: secret.value, ...forWriting } };
}
