// @ts-nocheck
import { expect } from "vitest";
import { cli, scratchFile } from "./run-cli.js";

/** What a command says of a garden, without complaint; its lines joined, as a grower reads them. */
export async function read(text: string, ...argv: [string, ...string[]]): Promise<string> {
  const [command, ...options] = argv;
  const file = scratchFile("garden.yaml", text);
  const { code, stdout, stderr } = await cli([command, file, ...options]);
  expect({ code, stderr }).toEqual({ code: 0, stderr: "" });
  return stdout.replace(/\s+/g, " ");
}
