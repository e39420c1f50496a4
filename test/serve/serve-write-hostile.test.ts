import { gzipSync } from "node:zlib";
import { connect } from "node:net";
import { writeFile } from "node:fs/promises";
import { describe, expect, onTestFinished, test } from "vitest";
import { usualRate } from "../../src/serve/rate-limit.js";
import { exchange, get, until } from "./a-server.js";
import {
  aWritableServer,
  hashOf,
  roundForm,
  testWriter,
  undoForm,
  type Writable,
} from "./a-writer.js";

const onEnd = onTestFinished;
const form = roundForm("2027-07-10");
const urlencoded = "application/x-www-form-urlencoded";

/** What the file was stays, and the next good form is written. */
async function isUnharmed(server: Writable, before: string): Promise<void> {
  expect(await server.text()).toBe(before);
  expect((await server.send(roundForm("2027-07-11"))).status).toBe(303);
  expect(await server.text()).toContain("2027-07-11");
}

describe("a form that no page of this server sent changes nothing", () => {
  type Headers = Readonly<Record<string, string | string[]>>;
  const cases: [name: string, headers: (origin: string) => Headers, status: number][] = [
    ["of another site", () => ({ origin: "https://evil.example" }), 403],
    ["of another site that asks this computer", () => ({ "sec-fetch-site": "cross-site" }), 403],
    ["of another port of this computer", () => ({ origin: "http://127.0.0.1:1" }), 403],
    ["of the same site only", () => ({ "sec-fetch-site": "same-site" }), 403],
    ["typed into the address bar", () => ({ "sec-fetch-site": "none" }), 403],
    ["with the origin null, as of a frame without one", () => ({ origin: "null" }), 403],
    ["with an empty origin", () => ({ origin: "" }), 403],
    ["by another scheme", (own) => ({ origin: own.replace("http:", "https:") }), 403],
    ["with a path in its origin", (own) => ({ origin: `${own}/` }), 403],
    ["with capitals in its origin", (own) => ({ origin: own.toUpperCase() }), 403],
    ["with two origins", (own) => ({ origin: [own, own] }), 403],
    ["with another name for this computer", () => ({ host: "localhost" }), 403],
    ["as text", () => ({ "content-type": "text/plain" }), 415],
    ["in parts", () => ({ "content-type": "multipart/form-data; boundary=x" }), 415],
    ["as JSON", () => ({ "content-type": "application/json" }), 415],
    ["of no type", () => ({ "content-type": "" }), 415],
    ["in other letters", () => ({ "content-type": `${urlencoded}; charset=utf-16` }), 415],
    ["compressed", () => ({ "content-encoding": "gzip" }), 415],
  ];
  test.each(cases)("%s", async (_, headers, status) => {
    const server = await aWritableServer(onEnd);
    const before = await server.text();
    const answer = await server.send(form, headers(server.origin));
    expect(answer.status).toBe(status);
    expect(answer.body.toString()).toContain("so nothing was written.");
    expect(answer.headers.location).toBeUndefined();
    await isUnharmed(server, before);
  });

  test.each([
    ["no origin", `Host: 127.0.0.1:PORT\r\n`, 403],
    [
      "two hosts",
      `Host: 127.0.0.1:PORT\r\nHost: 127.0.0.1:PORT\r\nOrigin: http://127.0.0.1:PORT\r\n`,
      400,
    ],
    [
      "a host of elsewhere in its target",
      `Host: 127.0.0.1:PORT\r\nOrigin: http://evil.example\r\n`,
      403,
    ],
  ])("with %s", async (name, head, status) => {
    const server = await aWritableServer(onEnd);
    const before = await server.text();
    const target = name.includes("target")
      ? `http://127.0.0.1:${server.port}${server.base}/weir`
      : `${server.base}/weir`;
    const answer = await exchange(
      server.port,
      `POST ${target} HTTP/1.1\r\n${head.replaceAll("PORT", String(server.port))}Content-Type: ${urlencoded}\r\nContent-Length: ${form.length}\r\n\r\n${form}`,
      { halfOpen: true },
    );
    expect(answer).toMatch(new RegExp(`^HTTP/1\\.1 ${status} `));
    await isUnharmed(server, before);
  });
});

test.each([
  ["empty", "", 400],
  ["without an id", "kind=round&day=2027-07-10", 400],
  ["with two ids", `${form}&form=${"A".repeat(22)}`, 400],
  ["with an id that leads elsewhere", form.replace(/form=[\w-]+/, "form=..%2F..%2Fx"), 400],
  ["with half an escape", `${form}&x=%4`, 400],
  ["that is no UTF-8", `${form}&x=%ff`, 400],
  ["of raw bytes", Buffer.from(Array.from({ length: 5000 }, (_, i) => i % 256)), 400],
  ["packed", gzipSync(form), 400],
  ["of 64 kB and one", `${form}&x=${"a".repeat(64_000)}`, 413],
  ["of 300 kB", `${form}&x=${"a".repeat(300_000)}`, 413],
  ["of 20,000 fields", `${form}${"&a=".repeat(20_000)}`, 303],
])("a form %s changes nothing", async (_, body, status) => {
  const server = await aWritableServer(onEnd);
  const before = await server.text();
  expect((await server.send(body)).status).toBe(status);
  await isUnharmed(server, before);
});

describe("a form's body", () => {
  const head = ({ base, origin, port }: Writable, more: string): string =>
    `POST ${base}/weir HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nOrigin: ${origin}\r\nContent-Type: ${urlencoded}\r\n${more}\r\n`;

  test("may come in pieces, and waits to be asked for", async () => {
    const server = await aWritableServer(onEnd);
    const half = Math.floor(form.length / 2);
    const chunks = [form.slice(0, half), form.slice(half), ""]
      .map((part) => `${part.length.toString(16)}\r\n${part}\r\n`)
      .join("");
    const more = "Transfer-Encoding: chunked\r\nExpect: 100-continue\r\nConnection: close\r\n";
    const answer = await exchange(server.port, `${head(server, more)}${chunks}`, {
      halfOpen: true,
    });
    expect(answer).toMatch(/^HTTP\/1\.1 100 Continue\r\n\r\nHTTP\/1\.1 303 /);
    expect(await server.text()).toContain("2027-07-10");
  });

  test("without end is refused once it is too large, and the connection ends", async () => {
    const server = await aWritableServer(onEnd);
    const before = await server.text();
    const chunk = `10000\r\n${"a".repeat(0x10000)}\r\n`;
    const answer = await exchange(
      server.port,
      `${head(server, "Transfer-Encoding: chunked\r\n")}${chunk.repeat(5)}`,
      { halfOpen: true },
    );
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
    const told = await exchange(server.port, head(server, "Content-Length: 900000000000\r\n"), {
      halfOpen: true,
    });
    expect(told).toMatch(/^HTTP\/1\.1 413 /);
    await isUnharmed(server, before);
  });

  test("that is slow ends with its time, and one that breaks off writes nothing", async () => {
    const limits = { headersMs: 300, requestMs: 500, checkMs: 50 };
    const server = await aWritableServer(onEnd, { limits });
    const before = await server.text();
    const length = `Content-Length: ${form.length}\r\n`;
    const slow = await exchange(server.port, `${head(server, length)}${form.slice(0, 40)}`, {
      halfOpen: true,
    });
    expect(slow).toMatch(/^HTTP\/1\.1 408 /);
    const socket = connect(server.port, "127.0.0.1");
    await new Promise((resolve) => {
      socket.write(`${head(server, length)}${form.slice(0, -1)}`, resolve);
    });
    socket.resetAndDestroy();
    expect(server.lines.join("\n")).not.toContain("bug:");
    await isUnharmed(server, before);
  });

  test("is followed by the next request on the same connection, and hides none", async () => {
    const server = await aWritableServer(onEnd);
    const length = `Content-Length: ${form.length}\r\n`;
    const next = `GET /weir HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`;
    const answer = await exchange(server.port, `${head(server, length)}${form}${next}`, {
      halfOpen: true,
    });
    expect(answer.match(/HTTP\/1\.1 \d+/g)).toEqual(["HTTP/1.1 303", "HTTP/1.1 200"]);
    // Where the form is refused unread, what follows it is not read either.
    const foreign = head(server, length).replace(server.origin, "null");
    const refused = await exchange(server.port, `${foreign}${form}${next}`, { halfOpen: true });
    expect(refused.match(/HTTP\/1\.1 \d+/g)).toEqual(["HTTP/1.1 403"]);
  });
});

test("so many forms from one address are enough: then 429, until some time has passed", async () => {
  let nowMs = Date.UTC(2027, 6, 10, 12);
  let written = 0;
  const tick: typeof testWriter.tick = () => {
    written++;
    return Promise.resolve({ kind: "already", told: "x" });
  };
  const writing = { writer: { ...testWriter, tick } };
  const { send, port } = await aWritableServer(onEnd, { writing, nowMs: () => nowMs });
  const statuses: number[] = [];
  for (let i = 0; i < usualRate.burst + 2; i++) statuses.push((await send(form)).status);
  expect(statuses.lastIndexOf(303)).toBe(usualRate.burst - 1);
  const { status, headers, body } = await send(form);
  expect([status, headers["retry-after"]]).toEqual([429, "1"]);
  expect(body.toString()).toContain("so nothing was written.");
  expect((await get(port, "/weir")).status).toBe(200);
  nowMs += 2000;
  const later = [await send(form), await send(form), await send(form)];
  expect(later.map((one) => one.status)).toEqual([303, 303, 429]);
  // Copies of one form are answered without the writer.
  expect(written).toBe(1);
});

test("a stale page conflicts, and an undo of a stranger's form finds nothing", async () => {
  const server = await aWritableServer(onEnd);
  const before = await server.text();
  for (const body of [
    roundForm("2027-07-10", { seen: "before" }),
    undoForm("Z".repeat(22)),
    undoForm("__proto__".padEnd(22, "_")),
  ])
    expect((await server.send(body)).status).toBe(303);
  await isUnharmed(server, before);
});

test("a file that another program changes at the same time is not written over", async () => {
  const server = await aWritableServer(onEnd);
  const opened = hashOf(await server.text());
  await writeFile(server.file, "Weir Europe/Dublin 2027-09-01\n");
  const body = new URLSearchParams({ text: "mine", opened }).toString();
  const { status } = await server.send(body, {}, `${server.base}/weir/file.yaml`);
  expect(status).toBe(409);
  expect(await server.text()).toContain("2027-09-01");
});

test("2,000 forms by chance write nothing and leave no line of a bug", async () => {
  const server = await aWritableServer(onEnd, { nowMs: clock() });
  const before = await server.text();
  const pieces = ["form=", "A".repeat(22), "kind=", "round", "undo", "&", "=", "%", "%00", "+"];
  let state = 7;
  const below = (n: number): number => {
    // Numerical Recipes' generator, from memory.
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state % n;
  };
  const statuses = new Set<number>();
  for (let i = 0; i < 2000; i++) {
    const length = 1 + below(12);
    const body = Array.from({ length }, () => pieces[below(pieces.length)] ?? "").join("");
    statuses.add((await server.send(body)).status);
  }
  expect([...statuses].filter((status) => status !== 400 && status !== 303)).toEqual([]);
  expect(server.lines.join("\n")).not.toContain("bug:");
  await until(async () => (await server.text()) === before);
  await isUnharmed(server, before);
});

/** A second goes by with each look at it, so that nothing comes too often. */
function clock(): () => number {
  let nowMs = Date.UTC(2027, 6, 10);
  return () => (nowMs += 1000);
}
