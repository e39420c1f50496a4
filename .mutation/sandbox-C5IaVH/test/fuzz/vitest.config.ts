// @ts-nocheck
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["test/fuzz/garden-texts.ts"],
    globalSetup: ["scripts/compile-data.js"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 3_600_000,
  },
});
