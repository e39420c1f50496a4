// Mutation testing: `ROOMS=days npm run mutate` changes one thing after the other in `src/days` and
// counts the changes that a test notices; `EVERY=8` tries a sample.
import { mutatedLines } from "./rooms.js";

export default {
  testRunner: "vitest",
  vitest: { configFile: "test/mutation/vitest.config.ts", related: false },
  coverageAnalysis: "perTest",
  plugins: ["@stryker-mutator/vitest-runner"],
  mutate: mutatedLines(),
  ignorePatterns: ["dist", "pictures", ".ci", "coverage"],
  // What is computed once when a file is loaded would need the file loaded anew for each change.
  ignoreStatic: true,
  dryRunTimeoutMinutes: 30,
  thresholds: { high: 85, low: 85, break: 85 },
  tempDirName: ".mutation",
  reporters: ["progress-append-only", "clear-text", "json"],
  jsonReporter: { fileName: "mutation.json" },
};
