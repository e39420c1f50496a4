/**
 * The floors of the house, from the ground up. A folder uses only folders below it, and only
 * through their `index.ts`; types count as much as code.
 */
const floors = [
  ["climate"],
  ["crops"],
  ["garden"],
  ["stages", "published"],
  ["rules", "stock", "watering"],
  ["calcium"],
  ["season"],
  ["words", "days"],
  ["log"],
  ["cans"],
  ["notes"],
  ["ticks"],
  ["calendar", "outputs"],
  ["serve", "web"],
  ["cli"],
];

/** Rooms inside a folder, from the ground up. */
const insideFloors = {
  stock: [["chemistry"], ["ledger"], ["making"]],
  outputs: [["picture"], ["page", "print", "tick"]],
};

/** `folder` may use nothing on its own floor or above. */
const upward = (rooms, root) =>
  rooms.flatMap((floor, i) =>
    floor.map((folder) => {
      const above = rooms.slice(i).flat();
      return {
        name: `${root}${folder}-looks-down`,
        severity: "error",
        from: { path: `^${root}${folder}/` },
        to: { path: `^${root}(${above.filter((other) => other !== folder).join("|") || "-"})/` },
      };
    }),
  );

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    { name: "no-circle", severity: "error", from: {}, to: { circular: true } },
    {
      name: "through-the-face",
      comment: "A folder's public face is its index.ts.",
      severity: "error",
      from: { path: "^src/([^/]+)/" },
      to: {
        path: "^src/[^/]+/",
        pathNot: ["^src/$1/", "^src/[^/]+/index[.]ts$", "^src/compiled/"],
      },
    },
    {
      name: "through-the-face-from-the-top",
      severity: "error",
      from: { path: "^src/[^/]+[.]ts$" },
      to: { path: "^src/[^/]+/", pathNot: "^src/([^/]+/index|compiled/[^/]+)[.]ts$" },
    },
    {
      name: "data-through-the-tables",
      comment:
        "What is made of the data files is for the tables and what is reckoned from them, a garden file's types and the shares of a curve aside.",
      severity: "error",
      from: { pathNot: "^src/(tables|reckon)[.]ts$" },
      to: { path: "^src/compiled/", pathNot: "(garden-file|daily-shares)[.]ts$" },
    },
    {
      name: "through-the-face-of-a-room",
      severity: "error",
      from: { path: "^src/([^/]+)/([^/]+)" },
      to: { path: "^src/$1/[^/]+/", pathNot: ["^src/$1/$2/", "^src/$1/[^/]+/index[.]ts$"] },
    },
    {
      name: "ground-looks-down",
      comment: "What every folder leans on leans on nothing.",
      severity: "error",
      from: {
        path: "^src/(dates|legible|lock|missing-unit|problem|schema-check|suggest|values|write-whole)[.]ts$",
      },
      to: { path: "^src/[^/]+/" },
    },
    {
      name: "folders-look-down",
      comment: "The story, the tables and the library's face stand above the folders of the core.",
      severity: "error",
      from: { path: "^src/", pathNot: "^src/([^/]+[.]ts|serve/|web/|cli/)" },
      to: { path: "^src/(plan|plan-garden|tables|reckon|index)[.]ts$" },
    },
    ...upward(floors, "src/"),
    ...Object.entries(insideFloors).flatMap(([folder, rooms]) => upward(rooms, `src/${folder}/`)),
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    doNotFollow: { path: "node_modules" },
  },
};
