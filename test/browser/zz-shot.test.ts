import { readFileSync } from "node:fs";
import { test } from "vitest";
import { startBrowser, show } from "./browser.js";
test("shot", async () => {
  const b = await startBrowser();
  for (const spec of (process.env["SHOTS"] ?? "").split(",")) {
    const [name, w] = spec.split(":");
    const s = await show(b, readFileSync(`/tmp/m/${name}.html`, "utf8"), { viewport: { width: Number(w ?? 816), height: 1056 } } as never);
    await s.page.emulateMedia({ media: "print" });
    await s.page.screenshot({ path: `/tmp/m/${name}.png`, fullPage: true });
    await s.close();
  }
  await b.close();
}, 120000);
