// @ts-nocheck
import { byText } from "../values.js";
import { qrTerminal } from "./qr.js";
import type { GardenServer } from "./serve.js";

/** With more gardens than this only the first ones are listed, and with more than one no code is drawn. */
const mostListed = 20;

/** What to print when the server has started: where each garden is, and a code to get there. */
export function announcement(
  server: Pick<GardenServer, "origins" | "url" | "isLoopback" | "links" | "writeLink">,
  color: boolean,
): string {
  const links = [...server.links()].sort((a, b) => byText(a.page, b.page));
  const shown = links.slice(0, mostListed);
  const lines = shown.flatMap(({ title, page, webcal, http }) => [
    title,
    `  page      ${page}`,
    `  subscribe ${webcal}`,
    `        or  ${http}`,
  ]);
  if (links.length > shown.length) lines.push(`and ${links.length - shown.length} more gardens`);
  const writing = writingLines(server, links.length === 1 ? links[0]?.page : undefined, color);
  if (server.isLoopback) {
    lines.push(`All gardens: ${server.origins.join(" ")}/`, "Only this computer can reach them.");
    return `${[...lines, ...writing].join("\n")}\n`;
  }
  if (server.url !== undefined) {
    lines.push(`The proxy in front is to ask ${server.origins[0] ?? ""}`);
  } else if (server.origins.length > 1) {
    lines.push(`This computer is also at ${server.origins.slice(1).join(" ")}`);
  }
  lines.push("Whoever has such a link can read the garden: share it like a key.");
  const [only] = links;
  const code = only !== undefined && links.length === 1 ? `\n${qrTerminal(only.page, color)}` : "";
  return `${lines.join("\n")}\n${code}${writing.map((line) => `${line}\n`).join("")}`;
}

/** @param page of the only garden */
function writingLines(
  { writeLink, isLoopback }: Pick<GardenServer, "writeLink" | "isLoopback">,
  page: string | undefined,
  color: boolean,
): string[] {
  if (writeLink === undefined) return [];
  const link =
    page === undefined ? writeLink : `${writeLink}${page.slice(page.lastIndexOf("/") + 1)}`;
  const lines = [
    `To mark and write: ${link}`,
    "Whoever has this link can change the garden files: show it to nobody else.",
  ];
  return isLoopback ? lines : [...lines, "", qrTerminal(link, color).trimEnd()];
}
