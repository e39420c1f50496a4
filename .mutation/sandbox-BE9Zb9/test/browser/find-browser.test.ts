// @ts-nocheck
import { describe, expect, test } from "vitest";
import { findBrowser, packaged } from "./find-browser.js";

const machine =
  (...files: string[]) =>
  (path: string) =>
    files.includes(path);

const debian = "/usr/bin/chromium";
const windows = {
  ProgramFiles: "C:\\Program Files",
  "ProgramFiles(x86)": "C:\\Program Files (x86)",
  LOCALAPPDATA: "C:\\Users\\me\\AppData\\Local",
};

describe("the browser of the page tests", () => {
  test.each([
    ["linux", {}, debian],
    ["linux", {}, "/usr/bin/google-chrome-stable"],
    ["linux", {}, "/usr/bin/google-chrome"],
    ["darwin", {}, "/Applications/Chromium.app/Contents/MacOS/Chromium"],
    ["darwin", {}, "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"],
    ["win32", windows, "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe"],
    ["win32", windows, "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe"],
    ["win32", windows, "C:\\Users\\me\\AppData\\Local\\Chromium\\Application\\chrome.exe"],
  ])("is found on %s where it usually lies", (platform, environment, place) => {
    expect(findBrowser(platform, environment, machine(place))).toBe(place);
  });

  test("is the one that the environment names, before any other", () => {
    const named = "/opt/browser/chrome";
    expect(findBrowser("linux", { CHROMIUM_PATH: named }, machine(debian, named))).toBe(named);
  });

  test("is asked for in vain where the environment names no file", () => {
    expect(() => findBrowser("linux", { CHROMIUM_PATH: "/gone" }, machine(debian))).toThrow(
      "CHROMIUM_PATH names /gone, which is not there",
    );
  });

  test.each(["linux", "darwin", "win32"])("is the packaged one on a bare %s", (platform) => {
    expect(findBrowser(platform, windows, machine())).toBe(packaged);
    expect(findBrowser(platform, {}, machine())).toBe(packaged);
  });

  test("is the packaged one where the environment hides the machine's own", () => {
    expect(findBrowser("linux", { CHROMIUM_PATH: packaged }, machine(debian))).toBe(packaged);
    expect(findBrowser("linux", { CHROMIUM_PATH: "" }, machine(debian))).toBe(debian);
  });
});
