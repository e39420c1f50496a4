import { byText } from "../values.js";
import { qrTerminal } from "./qr.js";
import type { GardenServer } from "./serve.js";

/** With more gardens than this only the first ones are listed, and with more than one no code is drawn. */
const mostListed = 20;

/** What to print when the server has started: where each garden is, and a code to get there. */
export function announcement(
  server: Pick<GardenServer, "origins" | "isLoopback" | "links">,
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
  if (server.isLoopback) {
    lines.push(`All gardens: ${server.origins.join(" ")}/`, "Only this computer can reach them.");
    return `${lines.join("\n")}\n`;
  }
  if (server.origins.length > 1) {
    lines.push(`This computer is also at ${server.origins.slice(1).join(" ")}`);
  }
  lines.push("Whoever has such a link can read the garden: share it like a key.");
  const [only] = links;
  const code = only !== undefined && links.length === 1 ? `\n${qrTerminal(only.page, color)}` : "";
  return `${lines.join("\n")}\n${code}`;
}
