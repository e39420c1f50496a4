// @ts-nocheck
import { stat, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { gunzipSync } from "node:zlib";
import ICAL from "ical.js";
import { describe, expect, onTestFinished, test } from "vitest";
import { day } from "../../src/dates.js";
import { parseHttpDate } from "../../src/serve/http-date.js";
import { serveGardens } from "../../src/serve/serve.js";
import { aFolder, aServer, exchange, gardenText, get, testSource } from "./a-server.js";

const gzip = { "accept-encoding": "gzip, deflate" };
const onEnd = onTestFinished;

describe("a garden on this computer", () => {
  test("has a calendar that another program reads, and a page", async () => {
    const { port } = await aServer(onEnd);
    const calendar = await get(port, "/weir.ics");
    expect(calendar.status).toBe(200);
    expect(calendar.headers["content-type"]).toBe("text/calendar; charset=utf-8");
    const events = new ICAL.Component(
      ICAL.parse(calendar.body.toString()) as never,
    ).getAllSubcomponents("vevent");
    expect(events).toHaveLength(2);
    const page = await get(port, "/weir");
    expect(page.headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(page.body.toString()).toContain("<title>Weir</title>");
    expect(page.body.toString()).toContain(`webcal://127.0.0.1:${port}/weir.ics`);
  });

  test("compressed and plain answers are the same content with validators of their own", async () => {
    const { port } = await aServer(onEnd);
    for (const path of ["/weir.ics", "/weir", "/"]) {
      const plain = await get(port, path);
      const packed = await get(port, path, gzip);
      expect(packed.headers["content-encoding"]).toBe("gzip");
      expect(plain.headers["content-encoding"]).toBeUndefined();
      expect(gunzipSync(packed.body)).toEqual(plain.body);
      expect(packed.headers.etag).not.toBe(plain.headers.etag);
      for (const { headers, body } of [plain, packed]) {
        expect(headers.etag).toMatch(/^"[\w-]{22}(-gzip)?"$/);
        expect(headers.vary).toBe("Accept-Encoding");
        expect(headers["cache-control"]).toBe("private, no-cache");
        expect(headers["content-length"]).toBe(String(body.length));
      }
    }
  });

  test("is sent once: then 304 with the same validators and no body", async () => {
    const { port } = await aServer(onEnd);
    for (const path of ["/weir.ics", "/weir"]) {
      const first = await get(port, path, gzip);
      const { etag = "", "last-modified": modified = "" } = first.headers;
      for (const conditions of [
        { "if-none-match": etag },
        { "if-none-match": `"other", W/${etag}` },
        { "if-none-match": "*" },
        { "if-modified-since": modified },
      ]) {
        const again = await get(port, path, { ...gzip, ...conditions });
        expect(again.status, JSON.stringify(conditions)).toBe(304);
        expect(again.body).toHaveLength(0);
        for (const name of ["etag", "cache-control", "vary", "last-modified"])
          expect(again.headers[name]).toBe(first.headers[name]);
      }
      // The tag of the other coding is another tag.
      expect((await get(port, path, { "if-none-match": etag })).status).toBe(200);
      expect((await get(port, path, { "if-modified-since": "nonsense" })).status).toBe(200);
    }
  });

  test("Last-Modified is the time of the change, not of the request, and never after the answer", async () => {
    let nowMs = Date.UTC(2027, 5, 1, 6);
    const { port } = await aServer(onEnd, { nowMs: () => nowMs });
    nowMs += 3_600_000;
    const { headers } = await get(port, "/weir.ics");
    expect(parseHttpDate(headers["last-modified"] ?? "", 0)).toBe(Date.UTC(2027, 5, 1, 6) / 1000);
    nowMs -= 7_200_000;
    const early = await get(port, "/weir.ics");
    expect(parseHttpDate(early.headers["last-modified"] ?? "", 0)).toBe(nowMs / 1000);
  });

  test("HEAD is GET without the body", async () => {
    const { port } = await aServer(onEnd);
    for (const path of ["/weir.ics", "/weir", "/", "/nothing"]) {
      const whole = await get(port, path);
      const head = await get(port, path, {}, "HEAD");
      expect(head.status).toBe(whole.status);
      expect(head.body).toHaveLength(0);
      expect({ ...head.headers, date: "" }).toEqual({ ...whole.headers, date: "" });
      expect(head.headers["content-length"]).toBe(String(whole.body.length));
    }
  });

  test.each(["POST", "PUT", "DELETE", "OPTIONS", "PATCH", "PROPFIND", "REPORT", "TRACE"])(
    "%s is answered by 405 with what is allowed, wherever it is sent",
    async (method) => {
      const { port } = await aServer(onEnd);
      for (const path of ["/weir.ics", "/nothing"]) {
        const { status, headers } = await get(port, path, {}, method);
        expect(status).toBe(405);
        expect(headers.allow).toBe("GET, HEAD");
      }
    },
  );

  test("CONNECT and `OPTIONS *` are answered by 405 too", async () => {
    const { port } = await aServer(onEnd);
    for (const line of ["CONNECT example.org:443", "OPTIONS *"]) {
      const answer = await exchange(port, `${line} HTTP/1.1\r\nHost: localhost\r\n\r\n`);
      expect(answer).toMatch(/^HTTP\/1\.1 405 .*\r\n/);
      expect(answer).toContain("\r\nAllow: GET, HEAD\r\n");
    }
  });

  test("all answers say what a browser may do with them", async () => {
    const { port } = await aServer(onEnd);
    for (const path of ["/weir.ics", "/weir", "/", "/nothing"]) {
      const { headers } = await get(port, path);
      expect(headers["x-content-type-options"]).toBe("nosniff");
      expect(headers["referrer-policy"]).toBe("no-referrer");
      expect(headers["content-security-policy"]).toMatch(/^default-src 'none'/);
      expect(headers["content-security-policy"]).not.toContain("unsafe");
    }
    const { headers } = await get(port, "/weir");
    expect(headers["content-security-policy"]).toMatch(
      /style-src 'sha256-[\w+/]{43}='; script-src 'none'/,
    );
  });

  test("answers HTTP/1.0, absolute targets, and requests one behind the other on a connection", async () => {
    const { port } = await aServer(onEnd);
    const old = await exchange(port, "GET /weir.ics HTTP/1.0\r\n\r\n");
    expect(old).toMatch(/^HTTP\/1\.1 200 OK/);
    const both = await exchange(
      port,
      `GET http://localhost/weir HTTP/1.1\r\nHost: x\r\n\r\nHEAD /weir.ics HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`,
    );
    expect(both.match(/HTTP\/1\.1 200 OK/g)).toHaveLength(2);
  });

  test("is not given to a page elsewhere that points its name at this computer", async () => {
    const { port } = await aServer(onEnd);
    expect((await get(port, "/weir.ics", { host: "evil.example" })).status).toBe(404);
    expect((await get(port, "/weir.ics", { host: `localhost:${port}` })).status).toBe(200);
  });

  test("on a day asked for is of that day everywhere: page, index, stamps; sent at the clock's time", async () => {
    const nowMs = Date.UTC(2027, 0, 1, 6);
    const today = day("2027-06-20");
    const { port } = await aServer(onEnd, { nowMs: () => nowMs, today });
    expect((await get(port, "/weir")).body.toString()).toContain("today 2027-06-20");
    const index = (await get(port, "/")).body.toString();
    expect(index).toContain("26 Jun");
    expect(index).not.toContain("12 Jun,");
    const { body, headers } = await get(port, "/weir.ics");
    expect(body.toString()).toContain("DTSTAMP:20270620T120000Z");
    expect(headers["last-modified"]).toBe("Fri, 01 Jan 2027 06:00:00 GMT");
  });

  test("is listed on the index with all others", async () => {
    const files = {
      "a.yaml": gardenText("Abbey", "2027-06-12", "2027-06-26"),
      "b.yml": "broken",
      "notes.txt": "x",
      ".c.yaml": "x",
    };
    let nowMs = Date.UTC(2027, 5, 12, 12);
    const { port } = await aServer(onEnd, { files, nowMs: () => nowMs });
    const { body } = await get(port, "/");
    expect(body.toString()).toContain("Abbey");
    expect(body.toString()).toContain("<bdi>b</bdi>");
    expect(body.toString()).toContain("<p>Today, Sat 12 Jun: feed 3 cans, 56 mL: toms</p>");
    nowMs += 86_400_000;
    expect((await get(port, "/")).body.toString()).toContain("<p>Next: Sat 26 Jun, feed 3 cans");
    expect(body.toString().match(/<li>/g)).toHaveLength(2);
  });

  test("a broken one with no earlier calendar gives none, and a page that says what is wrong", async () => {
    const { port } = await aServer(onEnd, { files: { "b.yaml": "broken" } });
    const calendar = await get(port, "/b.ics");
    expect(calendar.status).toBe(503);
    expect(calendar.headers["retry-after"]).toBe("60");
    expect(calendar.body.toString()).not.toContain("VCALENDAR");
    const page = await get(port, "/b");
    expect(page.status).toBe(200);
    expect(page.body.toString()).toContain("b.yaml:1:1: broken: mend it");
    expect(page.body.toString()).not.toContain("/b.yaml");
  });

  test("one file alone is served as well as a folder", async () => {
    const folder = await aFolder(onEnd);
    const file = join(folder, "Old Mill.yaml");
    await writeFile(file, gardenText("Mill", "2027-06-12"));
    const { port } = await aServer(onEnd, { gardens: [file] });
    expect((await get(port, "/old-mill.ics")).status).toBe(200);
  });

  test("the log has a line for each request, made of our own words", async () => {
    const { port, lines } = await aServer(onEnd);
    const before = lines.length;
    await get(port, "/weir.ics", gzip);
    await get(port, "/weir.ics?key=<script>");
    await get(port, "/secret-guess/weir.ics");
    await get(port, "/weir", {}, "POST");
    const said = lines.slice(before).map((line) => line.replace(/^\S+ |\d+ B [\d.]+ ms$/g, ""));
    expect(said).toEqual([
      "127.0.0.1 GET weir.ics 200 ",
      "127.0.0.1 GET weir.ics 200 ",
      "127.0.0.1 GET - 404 ",
      "127.0.0.1 POST - 405 ",
    ]);
  });

  test("a bug of ours is a 500 and a line in the log, and the server goes on", async () => {
    const page = (): string => {
      throw new Error("a bug");
    };
    const { port, lines } = await aServer(onEnd, { source: { ...testSource, page } });
    expect((await get(port, "/weir")).status).toBe(500);
    expect(lines.some((line) => line.includes("a bug"))).toBe(true);
    expect((await get(port, "/weir.ics")).status).toBe(200);
  });
});

describe("gardens on the network", () => {
  const network = { host: "0.0.0.0" };

  test("are behind a secret of at least 128 bits, and there is no index", async () => {
    const { server, port } = await aServer(onEnd, network);
    expect(server.isLoopback).toBe(false);
    const { pathname } = new URL(server.links()[0]?.http ?? "");
    const secret = /^\/([\w-]+)\/weir\.ics$/.exec(pathname)?.[1] ?? "";
    expect(Buffer.from(secret, "base64url").length * 8).toBeGreaterThanOrEqual(128);
    expect((await get(port, pathname)).status).toBe(200);
    expect((await get(port, `/${secret}/weir`)).body.toString()).toContain("<svg");
    for (const path of ["/", "/weir.ics", "/weir", `/${secret}`, `/${secret}/`])
      expect((await get(port, path)).status, path).toBe(404);
  });

  test("a wrong secret, a wrong garden and any other address get the same answer", async () => {
    const { server, port } = await aServer(onEnd, network);
    const { pathname } = new URL(server.links()[0]?.http ?? "");
    const wrong = `${pathname[1] === "A" ? "/B" : "/A"}${pathname.slice(2)}`;
    const answers = await Promise.all(
      [wrong, pathname.replace("weir", "other"), "/nothing", "/"].map((path) => get(port, path)),
    );
    const [first, ...others] = answers.map(({ status, headers, body }) => {
      return { status, body: body.toString(), headers: { ...headers, date: "" } };
    });
    expect(first?.status).toBe(404);
    for (const other of others) expect(other).toEqual(first);
  });

  test("the secret is kept for the owner alone, and is the same at the next start", async () => {
    const first = await aServer(onEnd, network);
    const [link] = first.server.links();
    await first.server.stop();
    expect((await stat(join(first.stateDir, "secret"))).mode & 0o777).toBe(0o600);
    expect((await stat(first.stateDir)).mode & 0o777).toBe(0o700);
    const next = await aServer(onEnd, { ...network, stateDir: first.stateDir });
    const path = new URL(link?.http ?? "").pathname;
    expect((await get(next.port, path)).status).toBe(200);
  });

  test("no line of the log holds the secret, whatever is asked for", async () => {
    const { server, port, lines } = await aServer(onEnd, network);
    const { pathname } = new URL(server.links()[0]?.http ?? "");
    const secret = pathname.split("/")[1] ?? "?";
    await get(port, pathname);
    await get(port, `/${secret}/other`);
    await get(port, `/x?${secret}`, { referer: secret });
    await get(port, pathname, {}, "POST");
    await exchange(port, `GET /${secret}/weir HTTP/9.9\r\n\r\n`);
    expect(lines.filter((line) => / (200|404|405|400) /.test(line)).length).toBeGreaterThanOrEqual(
      5,
    );
    for (const line of lines) expect(line).not.toContain(secret);
  });

  test("a name for this computer is not taken for the network, nor the network for this computer", async () => {
    expect((await aServer(onEnd, { host: "localhost" })).server.isLoopback).toBe(true);
    expect((await aServer(onEnd, { host: "127.0.0.2" })).server.isLoopback).toBe(true);
    expect((await aServer(onEnd, { host: "::" })).server.isLoopback).toBe(false);
  });
});

describe("what keeps a server from starting is said", () => {
  const start = async (differs: object) => {
    const folder = await aFolder(onEnd);
    await writeFile(join(folder, "a.yaml"), gardenText("A"));
    const log = (): void => undefined;
    const base = {
      gardens: [folder],
      source: testSource,
      stateDir: join(folder, "state"),
      version: "1",
      log,
    };
    const started = await serveGardens({ ...base, ...differs });
    if (started.ok) await started.value.stop();
    return started.ok ? "started" : started.problems.map((p) => `${p.code}: ${p.message}`).join();
  };

  test("a port in use, an address that is not ours, a path that is not there", async () => {
    const { port } = await aServer(onEnd);
    expect(await start({ port })).toMatch(`eaddrinuse: 127.0.0.1, port ${port}, is in use already`);
    expect(await start({ host: "192.0.2.1" })).toMatch("eaddrnotavail");
    expect(await start({ host: "no such name" })).toMatch("enotfound: the address no such name");
    expect(await start({ gardens: ["/nowhere/at/all"] })).toBe(
      "enoent: /nowhere/at/all does not exist",
    );
    expect(await start({})).toBe("started");
  });

  test("a secret file that holds something else is not made over", async () => {
    const stateDir = await aFolder(onEnd);
    await writeFile(join(stateDir, "secret"), "hunter2", { mode: 0o600 });
    expect(await start({ stateDir, host: "0.0.0.0" })).toMatch("bad-secret");
  });

  test("a secret that others could read is closed to them, and told of", async () => {
    const stateDir = await aFolder(onEnd);
    const file = join(stateDir, "secret");
    await writeFile(file, `${"x".repeat(32)}\n`, { mode: 0o644 });
    const { lines } = await aServer(onEnd, { stateDir, host: "0.0.0.0" });
    expect((await stat(file)).mode & 0o777).toBe(0o600);
    expect(lines[0]).toContain("could be read by others");
    expect(lines.join("\n")).not.toContain("x".repeat(32));
  });
});
