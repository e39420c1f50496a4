/** How much of the pure core the tests run: everything but the shell, in lines and branches. */
import { defineConfig, mergeConfig } from "vitest/config";
import tests from "./vitest.config.js";

const shell = ["src/{cli,serve,web}/**", "src/{lock,write-whole}.ts"];

export default mergeConfig(
  tests,
  defineConfig({
    test: {
      // Pages in a browser and the built program say nothing of the core that others don't.
      exclude: ["test/{browser,web,e2e,editors,pictures}/**"],
      reporters: ["default"],
      coverage: {
        enabled: true,
        // What was reached is of use, too, where a test has failed.
        reportOnFailure: true,
        provider: "v8",
        include: ["src/**/*.ts"],
        exclude: [...shell, "src/compiled/**"],
        reporter: ["text-summary", "json"],
        thresholds: { lines: 95, branches: 95 },
      },
    },
  }),
);
