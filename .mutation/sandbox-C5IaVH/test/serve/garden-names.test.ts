// @ts-nocheck
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gardenNames } from "../../src/serve/garden-names.js";

const namesOf = (...files: string[]): string[] => gardenNames(files).map(({ name }) => name);

describe("names of gardens in addresses", () => {
  test.each([
    ["/g/weir-cottage.yaml", "weir-cottage"],
    ["/g/Weir Cottage.yml", "weir-cottage"],
    ["/g/Jardín de Zoë.YAML", "jardin-de-zoe"],
    ["/g/--x__y--.yaml", "x-y"],
    ["/g/a.b.yaml", "a-b"],
    ["/g/..%2f..%2fetc.yaml", "2f-2fetc"],
  ])("%s is %s", (file, name) => {
    expect(namesOf(file)).toEqual([name]);
  });

  test("a name without a Latin letter or digit gets a mark of its own that does not move with the folder", () => {
    const [a, b] = namesOf("/g/菜园.yaml", "/g/花园.yaml");
    expect(a).toMatch(/^garden-[0-9a-f]{12}$/);
    expect(b).not.toBe(a);
    expect(namesOf("/elsewhere/菜园.yaml")).toEqual([a]);
  });

  test("files that would share a name all get marks, so that an address never turns to another garden", () => {
    const [alone] = namesOf("/g/South Field.yaml");
    const both = namesOf("/g/South Field.yaml", "/g/south-field.yaml");
    expect(alone).toBe("south-field");
    expect(both).not.toContain("south-field");
    expect(new Set(both).size).toBe(2);
  });

  test("files of one name in two folders are told apart", () => {
    const both = namesOf("/a/home.yaml", "/b/home.yaml");
    expect(new Set(both).size).toBe(2);
    for (const name of both) expect(name).toMatch(/^home-[0-9a-f]{12}$/);
  });

  test("`index` is kept for the index page", () => {
    expect(namesOf("/g/index.yaml")[0]).toMatch(/^index-[0-9a-f]{12}$/);
  });

  test("are safe, short, unique, and the same in any order, whatever the files are called", () => {
    const fileName = fc.oneof(
      fc.string({ unit: "binary", maxLength: 90 }),
      fc.constantFrom("a b", "a-b", "A B", "index", "İstanbul", "é", "e\u0301"),
    );
    const files = fc.uniqueArray(
      fileName.map((name) => `/g/${name.replaceAll("/", "")}.yaml`),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(files, (list) => {
        const names = namesOf(...list);
        expect(new Set(names).size).toBe(list.length);
        for (const name of names) expect(name).toMatch(/^[a-z0-9][a-z0-9-]{0,73}$/);
        const turned = new Map(gardenNames([...list].reverse()).map((g) => [g.file, g.name]));
        expect(list.map((file) => turned.get(file))).toEqual(names);
      }),
    );
  });
});
