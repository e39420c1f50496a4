import { createHash } from "node:crypto";
import { remembering } from "../values.js";

/** For every answer, as name, value, name, value. No-referrer: the address itself is the secret. */
export const securityHeaders: readonly string[] = headersWith("no-referrer");

/** With no-referrer a browser would send forms from the origin "null" (Fetch standard, section 3.2). */
export const writingSecurityHeaders: readonly string[] = headersWith("same-origin");

function headersWith(referrerPolicy: string): string[] {
  return [
    ...["X-Content-Type-Options", "nosniff"],
    ...["Referrer-Policy", referrerPolicy],
    ...["Cross-Origin-Resource-Policy", "same-origin"],
    ...["X-Robots-Tag", "noindex, nofollow"],
  ];
}

/** For what is no page. */
export const nothingAllowed = "default-src 'none'; frame-ancestors 'none'";

/**
 * A Content-Security-Policy (level 3) that lets exactly this page's own inline blocks work: each by its
 * hash, nothing from anywhere else, no forms, no frames. Text of ours in a page is escaped, so a
 * `<style>` or `<script>` in it is a block of ours.
 */
export function pagePolicy(html: string): string {
  return [...ownPolicy(html), "frame-ancestors 'none'"].join("; ");
}

/** For a page whose forms and script speak to this server, and whose service worker keeps it. */
export function formPolicy(html: string): string {
  return [
    ...["default-src 'none'", ownBlocks(html, "style"), ownBlocks(html, "script")],
    "img-src 'self' data:",
    ...ownServer,
    ...["base-uri 'none'", "frame-ancestors 'none'"],
  ].join("; ");
}

/** For the page on which the garden file is written: scripts are files, styles also bear the nonce. */
export function filePagePolicy(nonce: string): string {
  return [
    ...["default-src 'none'", `style-src 'self' 'nonce-${nonce}'`, "script-src 'self'"],
    ...["img-src 'self' data:", "font-src 'self'"],
    ...ownServer,
    ...["base-uri 'self'", "frame-ancestors 'none'"],
  ].join("; ");
}

const ownServer = [
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "form-action 'self'",
];

/** For scripts: a worker obeys the policy that it comes with (Content Security Policy 3, section 5.2). */
export const scriptPolicy =
  "default-src 'none'; script-src 'self'; connect-src 'self'; frame-ancestors 'none'";

/** The page with its policy in it, for hosts whose headers are not ours. */
export function withPolicy(html: string): string {
  // Without `frame-ancestors`, which browsers take from headers only.
  const policy = `<meta http-equiv="Content-Security-Policy" content="${ownPolicy(html).join("; ")}" />`;
  return html.replace(/<meta charset="utf-8"(?: \/)?>/, (charset) => `${charset}\n${policy}`);
}

function ownPolicy(html: string): string[] {
  return [
    "default-src 'none'",
    ownBlocks(html, "style"),
    ownBlocks(html, "script"),
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ];
}

/** Of the same few blocks on every page. */
const blockHash = remembering(
  100,
  (text: string) => text,
  (text) =>
    createHash("sha256")
      // Line ends are LF by the time a browser hashes (HTML Living Standard 13.2.3.5).
      .update(text.replace(/\r\n?/g, "\n"))
      .digest("base64"),
);

/** The directive that lets these blocks of the page work, and no others. */
function ownBlocks(html: string, tag: "style" | "script"): string {
  const block = new RegExp(`<${tag}(?:\\s[^>]*)?>([\\s\\S]*?)</${tag}\\s*>`, "gi");
  const hashes = [...html.matchAll(block)].map((match) => blockHash(match[1] ?? ""));
  const allowed = [...new Set(hashes)].map((hash) => `'sha256-${hash}'`);
  return `${tag}-src ${allowed.join(" ") || "'none'"}`;
}
