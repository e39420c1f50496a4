import { once } from "node:events";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { createServer as createTlsServer, type ServerOptions } from "node:https";
import type { Duplex } from "node:stream";
import { limitConnections } from "./connections.js";
import { onlyReading, ourFault, type Reply, twoHosts } from "./reply.js";
import { bugLine, requestLine } from "./request-log.js";

/** Our choice: a calendar program sends some 500 bytes in one go, and asks every few hours. */
export const usualLimits = {
  headerBytes: 8192,
  /** For the head of a request, and for the whole of it. */
  headersMs: 10_000,
  requestMs: 15_000,
  /** Without a byte either way, as with a client that does not read. */
  idleMs: 30_000,
  keepAliveMs: 5_000,
  /** How often the first two are looked at. */
  checkMs: 1_000,
  connections: 256,
  /** Of those, from one address, or one IPv6 network. */
  connectionsEach: 32,
  /** Requests on one connection that wait for the answers to those before them. */
  waiting: 16,
  /** For a client to take an answer: 400 kB at the speed of the slowest networks of phones. */
  answerMs: 300_000,
  /** For answers under way when the server stops. */
  stopMs: 2_000,
};

/** What one client may take of the server. */
export type Limits = Readonly<typeof usualLimits>;

/** A reply and, for the log, what was asked for in our own words. */
export interface Answer {
  readonly reply: Reply;
  readonly what: string;
}

/** What may answer a POST: undefined where none is taken, `gone` where the client has left meanwhile. */
export type Post = (request: IncomingMessage) => Promise<Answer | "gone" | undefined>;

/** What answers GET and HEAD: at once where it can. */
export type Get = (request: IncomingMessage, nowMs: number) => Answer | Promise<Answer>;

export interface Handling {
  readonly answer: Get;
  readonly post: Post;
  readonly log: (line: string) => void;
  readonly nowMs: () => number;
}

/** PEM texts. */
export interface Certificate {
  readonly cert: string;
  readonly key: string;
}

/**
 * Node's own server, with limits, whose answers come whole from `answer` and `post`. Not yet listening.
 *
 * @throws the system's error for a certificate and key that can't be used
 */
export function httpServer(handling: Handling, limits: Limits, tls?: Certificate): Server {
  const options: ServerOptions = {
    maxHeaderSize: limits.headerBytes,
    headersTimeout: limits.headersMs,
    requestTimeout: limits.requestMs,
    keepAliveTimeout: limits.keepAliveMs,
    connectionsCheckingInterval: limits.checkMs,
  };
  const waits = waitingRequests(limits);
  const onRequest = (request: IncomingMessage, response: ServerResponse): void => {
    const isFirst = response.socket !== null;
    if (!isFirst && !waits(request, response)) return;
    handle(request, response, handling);
    if (isFirst && isLate(response)) endLate(request, response, limits.answerMs);
  };
  const server = tls
    ? createTlsServer({ ...options, ...tls, handshakeTimeout: limits.headersMs }, onRequest)
    : createServer(options, onRequest);
  server.maxConnections = limits.connections;
  limitConnections(server, limits.connectionsEach, handling.log);
  server.setTimeout(limits.idleMs);
  server.on("clientError", (error: NodeJS.ErrnoException, socket) => {
    refuse(socket, refusalOf(error.code), handling);
  });
  server.on("connect", (_request, socket) => {
    refuse(socket, "405 Method Not Allowed\r\nAllow: GET, HEAD", handling);
  });
  return server;
}

/**
 * A client may send requests before it has the answers (RFC 9112 section 9.3.2), which then wait here,
 * each with its answer: those of 64 kB sent in one go would take 10 MB. False ends the connection, and
 * so does an answer that is the next one for too long. No listener tells when one is done: a response
 * with more listeners than others makes Node.js slower at all of them.
 */
function waitingRequests({
  waiting: most,
  answerMs,
}: Limits): (request: IncomingMessage, response: ServerResponse) => boolean {
  const queues = new WeakMap<Duplex, ServerResponse[]>();
  const watched = (socket: Duplex): ServerResponse[] => {
    const queue: ServerResponse[] = [];
    let next: ServerResponse | undefined;
    const look = setInterval(() => {
      dropDone(queue);
      if (queue[0] !== undefined && queue[0] === next) socket.destroy();
      next = queue[0];
    }, answerMs);
    socket.once("close", () => {
      clearInterval(look);
    });
    queues.set(socket, queue);
    return queue;
  };
  return ({ socket }, response) => {
    const queue = queues.get(socket) ?? watched(socket);
    dropDone(queue);
    if (queue.push(response) <= most) return true;
    socket.destroy();
    return false;
  };
}

function dropDone(queue: ServerResponse[]): void {
  while (queue[0]?.writableFinished === true) queue.shift();
}

/** Not yet all taken by the system, as nearly every answer is at once. */
function isLate({ writableEnded, socket }: ServerResponse): boolean {
  return !writableEnded || (socket?.writableLength ?? 0) > 0;
}

/** An answer that the client takes byte by byte is never idle, and ends all the same. */
function endLate({ socket }: IncomingMessage, response: ServerResponse, answerMs: number): void {
  const late = setTimeout(() => socket.destroy(), answerMs);
  response.once("close", () => {
    clearTimeout(late);
  });
}

function handle(
  request: IncomingMessage,
  response: ServerResponse,
  { answer, post, log, nowMs }: Handling,
): void {
  const atMs = nowMs();
  const beganMs = performance.now();
  const { method } = request;
  const isReading = method === "GET" || method === "HEAD";
  const finish = (found: Answer | "gone" | undefined): void => {
    if (found === "gone") {
      response.destroy();
      return;
    }
    const { reply, what } = found ?? notTaken;
    send(request, response, reply);
    const address = request.socket.remoteAddress;
    const bytes = method === "HEAD" ? 0 : (reply.body?.length ?? 0);
    const tookMs = performance.now() - beganMs;
    // One literal: a spread in it would cost as much as all the rest of our work.
    log(requestLine({ atMs, address, method, what, status: reply.status, bytes, tookMs }));
  };
  const fail = (error: unknown): void => {
    log(bugLine(error));
    if (response.headersSent) response.destroy();
    else finish({ reply: ourFault, what: "-" });
  };
  try {
    const found = hasTwoHosts(request)
      ? refused
      : isReading
        ? answer(request, atMs)
        : method === "POST"
          ? post(request)
          : notTaken;
    if (found instanceof Promise) found.then(finish).catch(fail);
    else finish(found);
  } catch (error) {
    fail(error);
  }
}

const refused: Answer = { reply: twoHosts, what: "-" };
const notTaken: Answer = { reply: onlyReading, what: "-" };

function send(request: IncomingMessage, response: ServerResponse, reply: Reply): void {
  const { method, headers } = request;
  const hasBody = "transfer-encoding" in headers || (headers["content-length"] ?? "0") !== "0";
  // What is not read of a request is never taken for another one: the connection ends with the answer.
  if ((hasBody && !request.readableEnded) || reply === twoHosts) response.shouldKeepAlive = false;
  response.writeHead(reply.status, reply.headers as string[]);
  response.end(method === "HEAD" ? undefined : reply.body);
}

/** Node keeps the first; another server on the way may have gone by the last (RFC 9112 section 3.2). */
function hasTwoHosts({ rawHeaders }: IncomingMessage): boolean {
  let hosts = 0;
  for (let i = 0; i < rawHeaders.length; i += 2) {
    const name = rawHeaders[i];
    if (name?.length === 4 && name.toLowerCase() === "host") hosts++;
  }
  return hosts > 1;
}

function refusalOf(code: string | undefined): string {
  if (code === "HPE_HEADER_OVERFLOW") return "431 Request Header Fields Too Large";
  if (code === "ERR_HTTP_REQUEST_TIMEOUT") return "408 Request Timeout";
  return "400 Bad Request";
}

/** Time for the client to read why, before the connection is cut. */
const lingerMs = 500;

function refuse(socket: Duplex, status: string, { log, nowMs }: Handling): void {
  if (socket.destroyed || socket.writableEnded) return;
  if (!socket.writable) {
    socket.destroy();
    return;
  }
  const { remoteAddress } = socket as Duplex & { remoteAddress?: string };
  socket.end(`HTTP/1.1 ${status}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
  setTimeout(() => socket.destroy(), lingerMs).unref();
  const facts = { atMs: nowMs(), address: remoteAddress, method: undefined, what: "-" };
  log(requestLine({ ...facts, status: Number.parseInt(status), bytes: 0, tookMs: 0 }));
}

/** No new connections; answers under way have a moment to end. */
export async function stopServer(server: Server, { stopMs }: Limits): Promise<void> {
  const closed = once(server.close(), "close");
  server.closeIdleConnections();
  const cut = setTimeout(() => {
    server.closeAllConnections();
  }, stopMs);
  await closed;
  clearTimeout(cut);
}
