/** Files that a garden file names -> their texts; one that can't be had is a problem of the garden. */
import { readFile, realpath, stat } from "node:fs/promises";
import { dirname, resolve, sep } from "node:path";
import { decodeText, largestFileBytes, type WeatherFiles } from "../garden/index.js";
import type { GardenSources, ReadGarden } from "../plan-garden.js";
import { type FilePath, inFileOrder, type Problem, type Result } from "../problem.js";
import { given } from "../values.js";
import { isDevice, readBytes } from "./files.js";
import { CommandError, exitCodes, type Shell } from "./shell.js";

export async function namedTexts(
  read: ReadGarden,
  gardenPath: string,
  shell: Shell,
): Promise<Result<Omit<GardenSources, "normals">>> {
  const folder = gardenPath === "-" ? "." : dirname(gardenPath);
  const { rulesFile, weather } = read.garden;
  const [ownRules, seen, forecast] = await Promise.all([
    rulesFile === undefined ? nothing : ownRulesText(rulesFile, folder, read, shell),
    weatherText("seen", folder, read),
    weatherText("forecast", folder, read),
  ]);
  if (!ownRules.ok || !seen.ok || !forecast.ok) {
    const problems = [ownRules, seen, forecast].flatMap((one) => (one.ok ? [] : one.problems));
    return { ok: false, problems: inFileOrder(problems) };
  }
  const days = given({ seen: seen.value, forecast: forecast.value });
  return {
    ok: true,
    value: given({ ownRules: ownRules.value, weather: weather === undefined ? undefined : days }),
  };
}

const nothing = { ok: true, value: undefined } as const;

async function ownRulesText(
  name: string,
  folder: string,
  read: ReadGarden,
  shell: Shell,
): Promise<Result<string>> {
  const path = resolve(folder, name);
  // A pipe would be waited for without end: a garden that is served must not hold up the others.
  if (await isDevice(path))
    return refusal(
      "rules-file",
      ["rules"],
      `the rule file \`${name}\` is no file`,
      "write the name of a file",
      read,
    );
  try {
    return decodeText(await readBytes(path, shell), name);
  } catch (error) {
    if (!(error instanceof CommandError && error.exitCode === exitCodes.io)) throw error;
    const message = `the rule file \`${name}\` cannot be read`;
    const mend = "check its name; it is looked for beside the garden file";
    return refusal("rules-file", ["rules"], message, mend, read);
  }
}

/** No file elsewhere on the computer is read because a garden file says so, or a link in its folder. */
async function weatherText(
  kind: keyof WeatherFiles,
  folder: string,
  read: ReadGarden,
): Promise<Result<string | undefined>> {
  const name = read.garden.weather?.[kind];
  if (name === undefined) return nothing;
  const refuse = (what: string, mend: string): Result<never> =>
    refusal("weather-file", ["weather", kind], `the weather file \`${name}\` ${what}`, mend, read);
  try {
    const [home, file] = await Promise.all([realpath(folder), realpath(resolve(folder, name))]);
    if (file !== home && !file.startsWith(home.endsWith(sep) ? home : home + sep))
      return refuse("is a link that leads out of the garden file's folder", "put the file there");
    const about = await stat(file);
    if (!about.isFile()) return refuse("is no file", "write the name of a file");
    if (about.size > largestFileBytes)
      return refuse(
        `is larger than ${largestFileBytes / 1_000_000} MB`,
        "check that it is a file of daily weather; keep the rows of the last years alone",
      );
    return decodeText(await readFile(file), name, largestFileBytes);
  } catch (error) {
    if (!(error instanceof Error && "code" in error)) throw error;
    return error.code === "ENOENT"
      ? refuse("is not there", "check its name; it is looked for beside the garden file")
      : refuse("cannot be read", "check its name, and whether it may be read");
  }
}

function refusal(
  code: string,
  path: FilePath,
  message: string,
  mend: string,
  { source }: ReadGarden,
): { readonly ok: false; readonly problems: readonly Problem[] } {
  const at = source.locate({ path });
  return { ok: false, problems: [{ code, file: source.file, at, message, mend }] };
}
