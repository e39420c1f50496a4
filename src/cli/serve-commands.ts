/** `serve` and `publish`: what others subscribe to. */
import { InvalidArgumentError } from "commander";
import type { AddCommand, SetExit } from "./program.js";
import type { PublishWishes, ServeWishes } from "./serve-command.js";
import type { Shell } from "./shell.js";

export function addServeCommands(add: AddCommand, setExit: SetExit, shell: Shell): void {
  add("serve <gardens...>", "serve calendar and page of gardens while it runs", [
    "serve garden.yaml",
    "serve gardens/ --port 8080",
    "serve garden.yaml --host 0.0.0.0",
  ])
    .option("--host <address>", "answer on this address too; only this computer without it")
    .option("--port <number>", "port; any free one without it", portOption)
    .option("--state <folder>", "where the secret and the last calendars are kept")
    .action(async (gardens: string[], options: ServeWishes) => {
      const { serveCommand } = await import("./serve-command.js");
      setExit(await serveCommand(gardens, options, shell));
    });

  add("publish <folder> <gardens...>", "write calendar and page of gardens for any web host", [
    "publish public garden.yaml",
    "publish public gardens/ --index --url https://example.org/gardens/",
  ])
    .option("--index", "write an index of the gardens too")
    .option("--url <address>", "where the folder will be found, for links on the pages", urlOption)
    .action(async (folder: string, gardens: string[], options: PublishWishes) => {
      const { publishCommand } = await import("./serve-command.js");
      setExit(await publishCommand(folder, gardens, options, shell));
    });
}

function portOption(text: string): number {
  const port = Number(text);
  if (!/^\d{1,5}$/.test(text) || port > 65_535)
    throw new InvalidArgumentError("Write a number from 0 to 65535.");
  return port;
}

function urlOption(text: string): string {
  const isUrl = URL.canParse(text) && /^https?:$/.test(new URL(text).protocol);
  if (!isUrl) throw new InvalidArgumentError("Write it like https://example.org/gardens/.");
  return text;
}
