/** Requests as bytes, to a real server with pages that write. */
import { writeFile } from "node:fs/promises";
import { aWritableServer, encoded, roundForm, undoForm } from "../serve/a-writer.js";
import { exchange, gardenText } from "../serve/a-server.js";
import type { Dice } from "../live/player/dice.js";
import { aKind, type Hunting } from "./kind.js";
import { Broken, mustBeFit, mustHold } from "./must-hold.js";
import { spoilText } from "./spoil-text.js";

const words = [
  ...["GET", "HEAD", "POST", "PUT", "OPTIONS", "CONNECT", "HTTP/1.0", "HTTP/1.1", "HTTP/2", "\r\n"],
  ...["Host", "Origin", "Content-Length", "Transfer-Encoding: chunked", "Expect: 100-continue"],
  ...["Accept-Encoding: gzip", "gzip;q=0", "identity", "If-None-Match", "W/", "*", "keep-alive"],
  ...["If-Modified-Since: Sat, 01 Jan 2028 00:00:00 GMT", "Upgrade: h2c", "Connection: close"],
  ...[
    "/weir.ics",
    "/weir",
    "/",
    "/../..",
    "//",
    "%2e%2e",
    "%00",
    "?",
    "#",
    "http://127.0.0.1/",
    "0",
    "-1",
  ],
  ...["file.yaml", "form=", "kind=undo", "bed=", "99999999999", "0x10", "\u0000", "\t"],
];

/** For the secret and the port, which are others at each start. */
const marks = { secret: "§", port: "¶" };

/** Each kind of request that the server answers. */
function goodRequests(): string[] {
  const base = `/${marks.secret}`;
  const origin = `http://127.0.0.1:${marks.port}`;
  const host = `Host: 127.0.0.1:${marks.port}`;
  const get = (target: string, ...more: string[]): string =>
    [`GET ${target} HTTP/1.1`, host, ...more, "", ""].join("\r\n");
  const post = (target: string, body: string): string =>
    [
      `POST ${target} HTTP/1.1`,
      ...[host, `Origin: ${origin}`, "Content-Type: application/x-www-form-urlencoded"],
      ...[`Content-Length: ${body.length}`, "", body],
    ].join("\r\n");
  const hash = "a".repeat(64);
  return [
    ...[get("/"), get("/weir"), get("/weir.ics", "Accept-Encoding: gzip"), get("/other")],
    get("/weir.ics", 'If-None-Match: W/"abc", "def"', "Accept-Encoding: gzip;q=0.5, identity"),
    get("/weir", "If-Modified-Since: Tue, 01 Jun 2027 08:00:00 GMT", "Connection: close"),
    get("/").replace("GET", "HEAD") + get("/weir.ics"),
    ...[
      get(`${base}/`),
      get(`${base}/weir`),
      get(`${base}/weir/file`),
      get(`${base}/weir/file.yaml`),
    ],
    ...[
      get(`${base}/service-worker.js`),
      get(`${base}/manifest.webmanifest`),
      get(`${base}/-/app.js`),
    ],
    post(`${base}/weir`, roundForm("2027-07-10", { id: "A".repeat(22) })),
    post(`${base}/weir`, roundForm("2027-07-17", { id: "B".repeat(22), seen: "m" })),
    post(`${base}/weir`, undoForm("A".repeat(22), "C".repeat(22))),
    post(
      `${base}/weir/file.yaml`,
      encoded([
        ["text", "Weir Europe/Dublin"],
        ["opened", hash],
      ]),
    ),
  ];
}

/** Fields that a request may well have, or that someone would have it have. */
const fields = [
  ...[
    "Accept-Encoding: gzip;q=0, *",
    "Accept-Encoding: identity;q=0",
    "Accept-Encoding:",
    "If-None-Match: *",
  ],
  ...["If-None-Match: W/", 'If-None-Match: "', "If-Modified-Since: Sun, 06 Nov 1994 08:49:37 GMT"],
  ...[
    "If-Modified-Since: Sunday, 06-Nov-94 08:49:37 GMT",
    "If-Modified-Since: Sun Nov  6 08:49:37 1994",
  ],
  ...[
    "If-Modified-Since: 0",
    "Range: bytes=0-1",
    "Expect: 100-continue",
    "Expect: x",
    "Connection: close",
  ],
  ...[
    "Transfer-Encoding: chunked",
    "Transfer-Encoding: gzip",
    "Content-Length: 5",
    "Content-Length: 99999",
  ],
  ...["Host: 127.0.0.1", "Host: evil.example", "Host: [::1]", "Host: localhost:1", "Origin: null"],
  ...[
    "Sec-Fetch-Site: cross-site",
    "X-Forwarded-For: 1",
    "Upgrade: h2c",
    "Cookie: a=b",
    `X: ${"a".repeat(9000)}`,
  ],
];

function withField(request: string, dice: Dice): string {
  const lines = request.split("\r\n");
  lines.splice(dice.between(1, 2), dice.chance(0.3) ? 1 : 0, dice.pick(fields));
  return lines.join("\r\n");
}

const statuses = [
  ...[100, 200, 303, 304, 400, 403, 404, 405, 408, 409, 411, 413, 415, 417, 422, 429, 431, 503],
];

/** Heads of all answers on one connection, as far as they can be told apart from bodies. */
function headsIn(answer: string): string[] {
  return [...answer.matchAll(/(?:^|(?<=\n|[^\n]))HTTP\/1\.1 \d{3}[^]*?\r\n\r\n/g)].map(
    ([head]) => head,
  );
}

async function begin(): Promise<Hunting<string>> {
  const undos: (() => Promise<void>)[] = [];
  let nowMs = Date.parse("2027-06-20T08:00:00Z");
  const server = await aWritableServer((undo) => void undos.push(undo), {
    nowMs: () => nowMs,
    lookMs: 3_600_000,
  });
  const { port, lines, file, secret } = server;
  const good = goodRequests();
  const filled = (request: string): string =>
    request.replaceAll(marks.secret, secret).replaceAll(marks.port, String(port));
  const text = gardenText("Weir", "2027-06-12", "2027-06-26");
  return {
    make: (dice: Dice) => {
      const one = dice.pick(good);
      return dice.chance(0.4)
        ? withField(one, dice)
        : spoilText(one, dice, { words, others: good });
    },
    shown: (request) => request,
    end: async () => {
      for (const undo of undos.reverse()) await undo();
    },
    check: async (made) => {
      const request = filled(made);
      lines.length = 0;
      // So much that no limit of so many forms a minute is met.
      nowMs += 600_000;
      const answer = await exchange(port, Buffer.from(request, "utf8"));
      for (const line of lines) {
        if (line.includes("bug:")) throw new Broken("a bug is in the log", line);
        mustHold(!line.includes(secret), "a secret is in the log", line);
        mustBeFit(line);
      }
      const heads = headsIn(answer);
      mustHold(answer === "" || answer.startsWith("HTTP/1.1 "), "this is no answer", answer);
      for (const head of heads) {
        const status = Number(head.slice(9, 12));
        mustHold(statuses.includes(status), "an answer of an unknown sort", head);
        mustHold(/^[\x20-\x7e\r\n]*$/.test(head), "a head with strange signs", head);
      }
      if ((await server.text()) !== text) {
        const isMeant = request.includes("POST") && request.includes(secret);
        mustHold(isMeant, "a file was written that nobody asked for", request);
        await writeFile(file, text);
      }
      return heads.some((head) => /^HTTP\/1\.1 [23]/.test(head)) ? "accepted" : "refused";
    },
  };
}

export const requests = aKind({ name: "requests", share: 222, begin });
