import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["test/**/*.test.ts"],
    globalSetup: ["scripts/compile-data.js"],
    setupFiles: ["test/setup.ts"],
    // What runs of the program keep is not for the developer's own folder.
    env: { XDG_CACHE_HOME: join(tmpdir(), "feedround-test-cache") },
    // One core is else left for an editor's watching.
    maxWorkers: "100%",
    reporters: ["default", "json"],
    outputFile: { json: "test-results.json" },
    // A guard against a test that hangs, and no measure of speed: tests count work or wait for what
    // happens, so that they pass on a machine that is busy with other programs.
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
