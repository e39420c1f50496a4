import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["test/**/*.test.ts"],
    globalSetup: ["scripts/compile-data.js"],
    setupFiles: ["test/setup.ts"],
    reporters: ["default", "json"],
    outputFile: { json: "test-results.json" },
    testTimeout: 30_000,
  },
});
