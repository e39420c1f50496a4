/** The garden file of the server that gave this page: it is saved whole, or not where it has changed. */
// @ts-nocheck

import { headSays } from "./dom.js";
import type { OpenedFile, Place, Saved } from "./places.js";

/** Its address, where a server gave the page. */
export function serverFile(): string | undefined {
  return headSays("garden-file");
}

/** Undefined where the server cannot be reached. */
export async function openFromServer(address: string): Promise<OpenedFile | undefined> {
  try {
    const answer = await fetch(address, { cache: "no-store" });
    if (!answer.ok) return undefined;
    const bytes = await answer.arrayBuffer();
    const raw = new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);
    return { raw, place: onServer(address, hashIn(answer.headers.get("etag"))) };
  } catch {
    return undefined;
  }
}

/** @param opened what the server called the text that was opened */
export function onServer(address: string, opened: string): Place {
  let seen = opened;
  const name = new URL(address, document.baseURI).pathname.split("/").at(-2) ?? "garden";
  return {
    name: `${name}.yaml`,
    seen: () => seen,
    save: async (raw) => {
      const body = new URLSearchParams({ text: raw, opened: seen });
      try {
        const answer = await fetch(address, { method: "POST", body });
        const told = (await answer.json()) as ServerAnswer;
        if (told.kind === "saved") seen = told.hash;
        return savedAs(told, (hash) => void (seen = hash));
      } catch {
        return {
          kind: "refused",
          told: "The server cannot be reached: your text is kept in this browser; save it later.",
        };
      }
    },
  };
}

type ServerAnswer =
  | { readonly kind: "saved"; readonly hash: string }
  | { readonly kind: "conflict"; readonly text: string; readonly hash: string }
  | { readonly kind: "refused"; readonly told: readonly string[] | string };

function savedAs(told: ServerAnswer, accept: (hash: string) => void): Saved {
  switch (told.kind) {
    case "saved":
      return { kind: "saved", told: "Saved with the server." };
    case "conflict":
      return {
        ...{ kind: "conflict", theirs: told.text },
        accept: () => {
          accept(told.hash);
        },
      };
    case "refused":
      return { kind: "refused", told: [told.told].flat().join(" ") };
  }
}

function hashIn(etag: string | null): string {
  return (etag ?? "").replace(/^W\//, "").replaceAll('"', "");
}
