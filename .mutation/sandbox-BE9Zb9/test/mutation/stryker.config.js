// @ts-nocheck
// Mutation testing of the rooms that a dose, a day or the past goes through: `npm run mutate -- days`
// changes one thing at a time in `src/days` and counts the changes that a test notices.
const rooms = (process.env.ROOMS ?? "days,cans,stock,stages,rules,calendar,log").split(",");

export default {
  testRunner: "vitest",
  vitest: { configFile: "test/mutation/vitest.config.ts", related: false },
  coverageAnalysis: "perTest",
  plugins: ["@stryker-mutator/vitest-runner"],
  mutate: rooms.map((room) => `src/${room}/**/*.ts`),
  ignorePatterns: ["dist", "pictures", ".ci"],
  // A constant that is computed once when a file is loaded would need the file loaded again.
  ignoreStatic: true,
  concurrency: 2,
  thresholds: { high: 85, low: 85, break: 85 },
  tempDirName: ".mutation",
  incrementalFile: ".mutation/known.json",
  reporters: ["clear-text", "json"],
  jsonReporter: { fileName: "mutation.json" },
};
