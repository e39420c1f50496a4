// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Guard,
  isLoopback,
  namesLoopback,
  routeOf,
  sameSecret,
} from "../../src/serve/route.js";

const loopback: Guard = { kind: "loopback" };
const secret = "0123456789abcdefghijABCDEFGHIJ-_";
const guarded: Guard = { kind: "secret", secret };
const nowhere = { to: "nowhere" };

describe("addresses on this computer", () => {
  test.each([
    ["/weir.ics", { to: "calendar", garden: "weir" }],
    ["/weir", { to: "page", garden: "weir" }],
    ["/", { to: "index" }],
    ["/?from=somewhere", { to: "index" }],
    ["/weir.ics?cache=123#x", { to: "calendar", garden: "weir" }],
    ["http://localhost:8080/weir.ics", { to: "calendar", garden: "weir" }],
    ["http://127.0.0.1", { to: "index" }],
    ["/weir/", nowhere],
    ["/weir.ICS", nowhere],
    ["/weir.ics.ics", nowhere],
    ["/../weir", nowhere],
    ["//weir", nowhere],
    ["/%77eir", nowhere],
    ["/weir\\x", nowhere],
    ["*", nowhere],
    ["", nowhere],
    ["weir", nowhere],
    [`/${secret}/weir.ics`, nowhere],
    ["http://garden.example/weir.ics", nowhere],
  ])("%s leads to %o", (target, route) => {
    expect(routeOf(target, "localhost:8080", loopback)).toEqual(route);
  });

  test("answer only to a Host header that names this computer, as a page elsewhere may point its name here", () => {
    for (const host of [
      undefined,
      "localhost",
      "LOCALHOST:1",
      "127.0.0.1:80",
      "127.8.9.1",
      "[::1]:80",
    ])
      expect(routeOf("/weir", host, loopback).to, host).toBe("page");
    for (const host of [
      "",
      "evil.example",
      "localhost.evil.example",
      "127.0.0.1.evil.example",
      "0.0.0.0",
      "[::2]",
      "::1",
      "a@localhost",
      "127.1",
    ])
      expect(routeOf("/weir", host, loopback), host).toEqual(nowhere);
  });

  test("an absolute request target counts before the Host header (RFC 9112 section 3.2.2)", () => {
    expect(routeOf("http://evil.example/weir", "localhost", loopback)).toEqual(nowhere);
  });
});

describe("addresses behind a secret", () => {
  test.each([
    [`/${secret}/weir.ics`, { to: "calendar", garden: "weir" }],
    [`/${secret}/weir?x`, { to: "page", garden: "weir" }],
    [`http://192.0.2.1/${secret}/weir`, { to: "page", garden: "weir" }],
    [`/${secret}/`, nowhere],
    [`/${secret}`, nowhere],
    [`//${secret}/weir`, nowhere],
    [`/x/${secret}/weir`, nowhere],
    [`/${secret.toLowerCase()}/weir`, nowhere],
    [`/${secret.slice(1)}/weir`, nowhere],
    ["/weir.ics", nowhere],
    ["/", nowhere],
    ["//weir", nowhere],
  ])("%s leads to %o", (target, route) => {
    expect(routeOf(target, "anything.example", guarded)).toEqual(route);
  });

  test("no text but the secret opens them", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 80 }), (text) => {
        expect(routeOf(`/${text}/weir.ics`, undefined, guarded)).toEqual(nowhere);
        expect(sameSecret(text, secret)).toBe(text === secret);
      }),
    );
    expect(sameSecret(secret, secret)).toBe(true);
  });
});

test("any text as a target leads to a garden by a plain name or nowhere", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), fc.string(), (target, host) => {
      const route = routeOf(target, host, loopback);
      if ("garden" in route) expect(route.garden).toMatch(/^[a-z0-9-]+$/);
    }),
  );
});

test.each([
  ["127.0.0.1", true],
  ["127.255.1.2", true],
  ["::1", true],
  ["::ffff:127.0.0.1", true],
  ["0.0.0.0", false],
  ["::", false],
  ["192.168.1.5", false],
  ["127.evil.example", false],
  ["::ffff:10.0.0.1", false],
])("%s reaches this computer only: %s", (address, only) => {
  expect(isLoopback(address)).toBe(only);
  if (only && !address.includes(":")) expect(namesLoopback(address)).toBe(true);
});
