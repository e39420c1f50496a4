// @ts-nocheck
import { expect, test } from "vitest";
import { decodeText, largestGardenBytes } from "../../src/garden/decode.js";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

function refusal(bytes: Uint8Array): string {
  const text = decodeText(bytes, "garden.yaml");
  if (text.ok) throw new Error("the bytes were read");
  return text.problems.map((p) => `${p.code} ${p.at.line}:${p.at.column}`).join();
}

test("UTF-8 is read as it stands, in any script", () => {
  const text = "garden: Gärten 菜园 🍅\n";
  expect(decodeText(utf8(text), "garden.yaml")).toEqual({ ok: true, value: text });
});

test("a byte order mark is left out", () => {
  expect(decodeText(utf8("\ufeffversion: 1"), "garden.yaml")).toEqual({
    ok: true,
    value: "version: 1",
  });
});

test.each([
  ["little-endian", [0xff, 0xfe, 0x76, 0x00]],
  ["big-endian", [0xfe, 0xff, 0x00, 0x76]],
])("%s UTF-16 is called by its name", (_, bytes) => {
  const text = decodeText(Uint8Array.from(bytes), "garden.yaml");
  expect(text).toMatchObject({
    ok: false,
    problems: [
      {
        code: "not-utf8",
        message: "the file is UTF-16, not UTF-8",
        mend: "save it as UTF-8 in the editor",
      },
    ],
  });
});

test("UTF-16 without a mark, and any file with zero bytes, is no text", () => {
  expect(refusal(Uint8Array.from([0x76, 0x00, 0x65, 0x00]))).toBe("not-text 1:1");
});

test("Latin-1 is refused at the line that holds it", () => {
  const latin1 = Buffer.from("version: 1\ngarden: Gärten\n", "latin1");
  expect(refusal(latin1)).toBe("not-utf8 2:1");
});

test("a letter broken off at the end of the file is refused there", () => {
  expect(refusal(utf8("a: 1\nb: ä").subarray(0, -1))).toBe("not-utf8 2:1");
});

test("bytes that are wrong on every line are told by the first", () => {
  expect(refusal(Uint8Array.from([0xc3, 0x0a, 0xc3, 0x0a]))).toBe("not-utf8 1:1");
});

test("a file of 5 MB is read, one byte more is refused", () => {
  expect(decodeText(new Uint8Array(largestGardenBytes).fill(0x23), "garden.yaml").ok).toBe(true);
  expect(refusal(new Uint8Array(largestGardenBytes + 1).fill(0x23))).toBe("too-large 1:1");
});

test("the bad line of five million lines is found, each line read once", () => {
  // Read anew for each line they would take hours.
  const bytes = new Uint8Array(largestGardenBytes).fill(0x0a);
  bytes[bytes.length - 1] = 0xff;
  expect(refusal(bytes)).toBe(`not-utf8 ${largestGardenBytes}:1`);
});

test("an empty file is empty text: what it lacks is told when it is read", () => {
  expect(decodeText(new Uint8Array(), "garden.yaml")).toEqual({ ok: true, value: "" });
});
