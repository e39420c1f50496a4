// @ts-nocheck
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../../..", import.meta.url).pathname,
    include: ["test/live/player/play.ts"],
    globalSetup: ["scripts/compile-data.js"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 36_000_000,
  },
});
