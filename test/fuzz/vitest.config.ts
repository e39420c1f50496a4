import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("../..", import.meta.url).pathname,
    include: ["test/fuzz/garden-texts.ts"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 3_600_000,
  },
});
