/** Where a garden file lies: on the grower's disk, with the server, or nowhere but in downloads. */
// @ts-nocheck

import { decodeText } from "../garden/index.js";
import { type Result } from "../problem.js";
import { made } from "./dom.js";

export type Saved =
  | { readonly kind: "saved"; readonly told: string }
  /** Somebody else has written it; once that is accepted, saving again writes over it. */
  | { readonly kind: "conflict"; readonly theirs: string; readonly accept: () => void }
  | { readonly kind: "refused"; readonly told: string };

export interface Place {
  readonly name: string;
  /** Texts with their byte order mark and line ends, here as everywhere. */
  readonly save: (raw: string) => Promise<Saved>;
  /** What the server calls the text that it had last. */
  readonly seen: () => string | undefined;
}

export interface OpenedFile {
  readonly raw: string;
  readonly place: Place;
}

const fileTypes = [
  { description: "Garden file", accept: { "text/yaml": [".yaml", ".yml"] as `.${string}`[] } },
];

/** Not in the types of a page yet (File System Access). */
interface Pickers {
  showOpenFilePicker?: (wishes: object) => Promise<FileSystemFileHandle[]>;
  showSaveFilePicker?: (wishes: object) => Promise<FileSystemFileHandle>;
}

/** Undefined where the grower thought better of it. */
export async function openFile(): Promise<Result<OpenedFile, string> | undefined> {
  const { showOpenFilePicker } = globalThis as Pickers;
  if (showOpenFilePicker === undefined) {
    const [file] = await chosenFiles(".yaml,.yml");
    return file && openedFile(file);
  }
  const [handle] = await unlessAborted(showOpenFilePicker({ types: fileTypes }), []);
  return handle && openedFile(await handle.getFile(), handle);
}

export async function openedFile(
  file: File,
  handle?: FileSystemFileHandle,
): Promise<Result<OpenedFile, string>> {
  const raw = await rawText(file);
  if (!raw.ok) return raw;
  const place = handle === undefined ? downloads(file.name) : onDisk(handle, raw.value);
  return { ok: true, value: { raw: raw.value, place } };
}

/** Text with its byte order mark, or why it is none. */
export async function rawText(file: File): Promise<Result<string, string>> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const text = decodeText(bytes, file.name);
  if (!text.ok)
    return { ok: false, problems: text.problems.map(({ message, mend }) => `${message}: ${mend}`) };
  return { ok: true, value: new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes) };
}

/** Every save is a download: what lies on the disk cannot be seen. */
export function downloads(name: string): Place {
  return {
    name,
    seen: () => undefined,
    save: (raw) => {
      download(name, "text/yaml", raw);
      return Promise.resolve({ kind: "saved", told: `${name} is among your downloads.` });
    },
  };
}

/** The place that the grower chooses for a text that lies nowhere yet. */
export async function chosenPlace(name: string): Promise<Place | undefined> {
  const { showSaveFilePicker } = globalThis as Pickers;
  if (showSaveFilePicker === undefined) return downloads(name);
  const wishes = { suggestedName: name, types: fileTypes };
  const handle = await unlessAborted(showSaveFilePicker(wishes), undefined);
  if (handle === undefined) return undefined;
  // The browser has asked already whether a file that is there may be written over.
  return onDisk(handle, await (await handle.getFile()).text());
}

function onDisk(handle: FileSystemFileHandle, opened: string): Place {
  let seen = opened;
  const { name } = handle;
  return {
    name,
    seen: () => undefined,
    save: async (raw) => {
      try {
        const now = await rawText(await handle.getFile());
        if (!now.ok) return { kind: "refused", told: `${name} is not text any more.` };
        if (now.value !== seen && now.value !== raw) {
          const { value: theirs } = now;
          return { kind: "conflict", theirs, accept: () => void (seen = theirs) };
        }
        const writing = await handle.createWritable();
        await writing.write(raw);
        await writing.close();
        seen = raw;
        return { kind: "saved", told: `${name} is saved.` };
      } catch (error) {
        return { kind: "refused", told: `${name} could not be written: ${String(error)}` };
      }
    },
  };
}

export function download(name: string, type: string, text: string): void {
  const href = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  made("a", { href, download: name }).click();
  setTimeout(() => {
    URL.revokeObjectURL(href);
  }, 60_000);
}

/** By the browser's own way of choosing; none where the grower thought better of it. */
export function chosenFiles(accept = ""): Promise<readonly File[]> {
  return new Promise((resolve) => {
    const input = made("input", { type: "file", accept });
    input.addEventListener("change", () => {
      resolve([...(input.files ?? [])]);
    });
    input.addEventListener("cancel", () => {
      resolve([]);
    });
    input.click();
  });
}

async function unlessAborted<T>(asked: Promise<T>, otherwise: T): Promise<T> {
  try {
    return await asked;
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") return otherwise;
    throw error;
  }
}
