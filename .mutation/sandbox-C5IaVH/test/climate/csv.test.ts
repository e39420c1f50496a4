// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CsvRow, csvRows, type Separator } from "../../src/climate/csv.js";

const cellsOf = (text: string, separator: Separator = ","): (readonly string[])[] =>
  [...csvRows(text, separator)].map(({ cells }) => cells);

describe("rows, as the rules of RFC 4180, section 2, have them", () => {
  test.each([
    ["1: lines end with CRLF", "aaa,bbb\r\nzzz,yyy\r\n", ["aaa", "bbb"], ["zzz", "yyy"]],
    ["2: the last need not", "aaa,bbb\r\nzzz,yyy", ["aaa", "bbb"], ["zzz", "yyy"]],
    ["5: cells may be quoted", '"aaa","bbb"\r\nzzz,yyy', ["aaa", "bbb"], ["zzz", "yyy"]],
    [
      "6: with line ends and commas",
      '"aaa","b\r\nb,b"\r\nzzz,yyy',
      ["aaa", "b\r\nb,b"],
      ["zzz", "yyy"],
    ],
    ["7: and quotes, written twice", '"aaa","b""bb"\r\n"""",""', ["aaa", 'b"bb'], ['"', ""]],
  ] as const)("%s", (_, text, ...rows) => {
    expect(cellsOf(text)).toEqual(rows);
  });

  test("blanks around cells, empty rows and comments are left out, empty cells are not", () => {
    const text = 'a ,  b,\t\n\n,,\n# c,d\n 1;2 , "3" ,';
    expect(cellsOf(text)).toEqual([
      ["a", "b", ""],
      ["1;2", "3", ""],
    ]);
    expect(cellsOf("1,5;2;\n", ";")).toEqual([["1,5", "2", ""]]);
  });
});

test("each cell's place is that of its first character or quote", () => {
  const text = 'a, b\n"x\ny",  "z" ,w\n';
  const rows = [...csvRows(text, ",")];
  expect(rows.map(({ offsets }) => offsets.map((at) => text[at]))).toEqual([
    ["a", "b"],
    ['"', '"', "w"],
  ]);
});

test.each([
  ['a,"b\nc,d', 2],
  ['a,"b"c,d', 2],
  ['"a"b",c', 0],
  ['a,b"c', undefined],
  ['a,"b" ,c', undefined],
])("in %j the quote astray stands at %s", (text, at) => {
  expect([...csvRows(text, ",")][0]?.strayQuote).toBe(at);
});

test("whatever is written as RFC 4180 says is read as it was", () => {
  const cell = fc
    .string({ unit: fc.constantFrom(...Array.from('ab1.,;"\n #é')) })
    .map((text) => text.trim());
  const row = fc
    .array(cell, { minLength: 1, maxLength: 5 })
    .filter((cells) => cells.some((one) => one !== ""));
  fc.assert(
    fc.property(
      fc.array(row),
      fc.constantFrom(",", ";"),
      fc.constantFrom("\n", "\r\n"),
      (rows, separator, end) => {
        const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
        const text = rows.map((cells) => cells.map(quoted).join(separator) + end).join("");
        expect(cellsOf(text, separator)).toEqual(rows);
      },
    ),
    { seed: 20270501 },
  );
});

test("any text gives rows, each cell at a place of its own", () => {
  const anyText = fc.string({ unit: fc.constantFrom(...Array.from('a1,;"\r\n\t #')) });
  fc.assert(
    fc.property(anyText, fc.constantFrom(",", ";"), (text, separator) => {
      const rows: CsvRow[] = [...csvRows(text, separator)];
      const places = rows.flatMap(({ offsets }) => offsets);
      expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
      expect(rows.every(({ cells, offsets }) => cells.length === offsets.length)).toBe(true);
    }),
    { seed: 20270502, numRuns: 500 },
  );
});
