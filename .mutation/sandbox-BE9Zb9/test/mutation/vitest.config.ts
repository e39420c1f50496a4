// @ts-nocheck
import { defineConfig } from "vitest/config";

import whole from "../vitest.config.js";

// What can tell a change in the rooms that are mutated, without what starts a browser, a server or
// another process: thousands of changes meet these tests.
export default defineConfig({
  test: {
    ...whole.test,
    include: [
      "test/{days,cans,stock,stages,rules,calendar,log,season,published}/**/*.test.ts",
      "test/plan.test.ts",
    ],
    // These set the machine's time zone, which a thread can't.
    exclude: ["test/calendar/ical-generator-traps.test.ts"],
    reporters: ["default"],
  },
});
