/** Which browser the page tests use: the one named, else the machine's own, else a packaged one. */
// @ts-nocheck


/** The value of `CHROMIUM_PATH` that passes by every browser of the machine. */
export const packaged = "packaged";

type Environment = Readonly<Record<string, string | undefined>>;

/**
 * @param exists whether a file lies at a path
 * @returns path of the program, or `packaged`
 * @throws Error if `CHROMIUM_PATH` names a file that is not there: another browser in its place
 *   would answer a question that nobody asked
 */
export function findBrowser(
  platform: string,
  environment: Environment,
  exists: (path: string) => boolean,
): string {
  const named = environment["CHROMIUM_PATH"];
  if (named === packaged) return packaged;
  if (named) {
    if (!exists(named)) throw new Error(`CHROMIUM_PATH names ${named}, which is not there`);
    return named;
  }
  return usualPlaces(platform, environment).find(exists) ?? packaged;
}

function usualPlaces(platform: string, environment: Environment): string[] {
  if (platform === "darwin")
    return ["Chromium", "Google Chrome"].map(
      (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
    );
  if (platform === "win32")
    return ["ProgramFiles", "ProgramFiles(x86)", "LOCALAPPDATA"]
      .flatMap((folder) => environment[folder] ?? [])
      .flatMap((folder) =>
        ["Chromium", "Google\\Chrome"]
          .map((name) => `${folder}\\${name}\\Application\\chrome.exe`)
          .concat(`${folder}\\Microsoft\\Edge\\Application\\msedge.exe`),
      );
  return ["chromium", "google-chrome-stable", "google-chrome"].map((name) => `/usr/bin/${name}`);
}
