import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["test/pictures/pictures.ts"],
    globalSetup: ["scripts/compile-data.js"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 600_000,
  },
});
