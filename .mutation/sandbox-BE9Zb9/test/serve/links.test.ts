// @ts-nocheck
import { describe, expect, test } from "vitest";
import { announcement } from "../../src/serve/announcement.js";
import { originOf, reachableAddresses, subscribeLinks } from "../../src/serve/links.js";
import { requestLine } from "../../src/serve/request-log.js";

const own = (address: string, family: "IPv4" | "IPv6", internal = false) =>
  ({ address, family, internal, netmask: "", mac: "", cidr: null, scopeid: 0 }) as never;
const interfaces = {
  lo: [own("127.0.0.1", "IPv4", true), own("::1", "IPv6", true)],
  eth0: [own("fe80::1", "IPv6"), own("2001:db8::5", "IPv6"), own("192.168.1.5", "IPv4")],
};

describe("links to a garden", () => {
  test("webcal is the http address under another name", () => {
    expect(subscribeLinks("http://192.168.1.5:80/secret", "weir")).toEqual({
      webcal: "webcal://192.168.1.5:80/secret/weir.ics",
      http: "http://192.168.1.5:80/secret/weir.ics",
      page: "http://192.168.1.5:80/secret/weir",
    });
    expect(subscribeLinks("https://example.org", "weir", ".html")).toMatchObject({
      webcal: "webcal://example.org/weir.ics",
      page: "https://example.org/weir.html",
    });
  });

  test("are shorter than 256 characters for the longest name, since some clients drop longer ones", () => {
    const base = `http://[2001:0db8:0000:0000:0000:0000:0000:0001]:65535/${"A".repeat(32)}`;
    expect(subscribeLinks(base, "n".repeat(73)).webcal.length).toBeLessThan(256);
  });

  test("an IPv6 address stands in brackets", () => {
    expect(originOf("http", "::1", 80)).toBe("http://[::1]:80");
    expect(originOf("https", "127.0.0.1", 80)).toBe("https://127.0.0.1:80");
  });

  test("a server on all addresses is reached at those that others can use", () => {
    expect(reachableAddresses("0.0.0.0", interfaces)).toEqual(["192.168.1.5"]);
    expect(reachableAddresses("::", interfaces)).toEqual(["192.168.1.5", "2001:db8::5"]);
    expect(reachableAddresses("192.168.1.5", interfaces)).toEqual(["192.168.1.5"]);
    expect(reachableAddresses("0.0.0.0", {})).toEqual(["127.0.0.1"]);
  });
});

describe("what is said at the start", () => {
  const links = (count: number) => () =>
    Array.from({ length: count }, (_, i) => ({
      title: `Garden ${i}`,
      ...subscribeLinks("http://192.168.1.5:80/secret", `garden-${String(i).padStart(4, "0")}`),
    }));

  test("one garden on the network: its links, a code, and a word about the secret", () => {
    const server = { origins: ["http://192.168.1.5:80"], isLoopback: false, links: links(1) };
    const text = announcement(server, false);
    expect(text).toContain("webcal://192.168.1.5:80/secret/garden-0000.ics");
    expect(text).toContain("http://192.168.1.5:80/secret/garden-0000\n");
    expect(text).toContain("share it like a key");
    expect(text).toContain("▀");
  });

  test("on this computer: no code, since no phone could follow it", () => {
    const text = announcement(
      { origins: ["http://127.0.0.1:80"], isLoopback: true, links: links(1) },
      false,
    );
    expect(text).toContain("Only this computer can reach them.");
    expect(text).not.toMatch(/[▀▄█]/);
  });

  test("a thousand gardens: the first twenty and how many more", () => {
    const text = announcement(
      { origins: ["http://127.0.0.1:80"], isLoopback: true, links: links(1000) },
      false,
    );
    expect(text).toContain("and 980 more gardens");
    expect(text.split("\n").length).toBeLessThan(90);
  });
});

test("a log line has the facts of a request in one line", () => {
  const facts = { atMs: Date.UTC(2027, 5, 1, 6), address: "192.0.2.7", method: "GET" };
  expect(requestLine({ ...facts, what: "weir.ics", status: 200, bytes: 5120, tookMs: 0.42 })).toBe(
    "2027-06-01T06:00:00Z 192.0.2.7 GET weir.ics 200 5120 B 0.4 ms",
  );
});
