/**
 * Types, lint and format at once, on as many cores as there are: `npm test` runs it before the tests.
 * What each has to say is told whole, one after the other.
 */
import { spawn } from "node:child_process";

const checks = ["types", "lint", "format:check"];

const ended = await Promise.all(
  checks.map(
    (check) =>
      new Promise((resolve) => {
        const child = spawn("npm", ["run", check], { shell: process.platform === "win32" });
        const said = [];
        for (const output of [child.stdout, child.stderr])
          output.on("data", (bytes) => said.push(bytes));
        child.on("close", (code) => {
          process.stdout.write(Buffer.concat(said));
          resolve(code);
        });
      }),
  ),
);
process.exitCode = ended.every((code) => code === 0) ? 0 : 1;
