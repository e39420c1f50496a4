/** `yaml-language-server`, as editors start it, asked over its standard input and output. */
// @ts-nocheck

import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

export interface Suggestion {
  readonly label: string;
  readonly insertText?: string;
  readonly documentation?: string | { readonly value: string };
}

export interface Diagnostic {
  readonly message: string;
  readonly range: { readonly start: Place };
}

/** From 0, as the protocol counts. */
interface Place {
  readonly line: number;
  readonly character: number;
}

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

/** An editor with one file open: what the server offers, explains and complains of in it. */
export interface LanguageServer {
  /** What it offers where `|` stands in the text. */
  readonly offered: (text: string) => Promise<readonly Suggestion[]>;
  /** What it explains where `|` stands in the text. */
  readonly explained: (text: string) => Promise<string>;
  readonly complaints: (text: string) => Promise<readonly Diagnostic[]>;
  readonly stop: () => Promise<void>;
}

/** @param schema name of a file of `schemas` that each text is held against */
export async function startLanguageServer(schema: string): Promise<LanguageServer> {
  const program = new URL(
    "../../node_modules/yaml-language-server/bin/yaml-language-server",
    import.meta.url,
  );
  const schemaUrl = new URL(`../../schemas/${schema}.schema.json`, import.meta.url).href;
  const child = spawn(process.execPath, [fileURLToPath(program), "--stdio"], {
    stdio: ["pipe", "pipe", "inherit"],
  });
  const awaited = new Map<string, (found: readonly Diagnostic[]) => void>();
  let toldSettings: () => void;
  const knowsSettings = new Promise<void>((resolve) => (toldSettings = resolve));
  const { request, notify } = speaker(child, {
    onSettings: () => {
      toldSettings();
    },
    settings: {
      yaml: {
        schemas: { [schemaUrl]: "garden-*.yaml" },
        schemaStore: { enable: false },
        completion: true,
        hover: true,
        validate: true,
      },
    },
    onDiagnostics: ({ uri, diagnostics }) => awaited.get(uri)?.(diagnostics),
  });
  await request("initialize", {
    processId: process.pid,
    rootUri: null,
    capabilities: {
      workspace: { configuration: true },
      textDocument: {
        completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown"] } },
      },
    },
  });
  notify("initialized", {});
  await knowsSettings;
  let opened = 0;
  const open = (text: string): { textDocument: { uri: string } } => {
    // Where the examples lie, whose first line names the schema.
    const { href: uri } = new URL(`../../examples/garden-${opened++}.yaml`, import.meta.url);
    notify("textDocument/didOpen", {
      textDocument: { uri, languageId: "yaml", version: 1, text },
    });
    return { textDocument: { uri } };
  };
  const openAt = (marked: string) => {
    const before = marked.slice(0, marked.indexOf("|")).split("\n");
    return {
      ...open(marked.replace("|", "")),
      position: { line: before.length - 1, character: before.at(-1)?.length ?? 0 },
    };
  };
  return {
    offered: async (marked) => {
      const list = (await request("textDocument/completion", openAt(marked))) as {
        items: Suggestion[];
      };
      return list.items;
    },
    explained: async (marked) => {
      const hover = (await request("textDocument/hover", openAt(marked))) as {
        contents: { value: string };
      } | null;
      return hover?.contents.value ?? "";
    },
    complaints: (text) =>
      new Promise((resolve) => {
        awaited.set(open(text).textDocument.uri, resolve);
      }),
    stop: async () => {
      const gone = new Promise((resolve) => child.once("exit", resolve));
      await request("shutdown", null);
      notify("exit", null);
      await gone;
    },
  };
}

/** Asks and answers, each message with its length before it; asked for its settings, it is told. */
function speaker(
  { stdin, stdout }: ChildProcess,
  {
    settings,
    onSettings,
    onDiagnostics,
  }: {
    settings: Readonly<Record<string, unknown>>;
    onSettings: () => void;
    onDiagnostics: (published: { uri: string; diagnostics: readonly Diagnostic[] }) => void;
  },
): {
  request: (method: string, params: unknown) => Promise<unknown>;
  notify: (method: string, params: unknown) => void;
} {
  if (stdin === null || stdout === null) throw new Error("no pipes to the language server");
  const asked = new Map<number, { resolve: (v: unknown) => void; reject: (e: Error) => void }>();
  const send = (message: object): void => {
    const body = JSON.stringify({ jsonrpc: "2.0", ...message });
    stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  const take = (message: Message): void => {
    const { id, method, params, result, error } = message;
    if (method !== undefined) {
      if (method === "textDocument/publishDiagnostics")
        onDiagnostics(params as { uri: string; diagnostics: Diagnostic[] });
      if (id === undefined) return;
      const items = (params as { items?: { section: string }[] } | undefined)?.items ?? [];
      send({ id, result: items.map(({ section }) => settings[section] ?? null) });
      if (method === "workspace/configuration") onSettings();
      return;
    }
    const waiting = asked.get(Number(id));
    asked.delete(Number(id));
    if (error === undefined) waiting?.resolve(result);
    else waiting?.reject(new Error(error.message));
  };
  let received = Buffer.alloc(0);
  stdout.on("data", (chunk: Buffer) => {
    received = Buffer.concat([received, chunk]);
    for (;;) {
      const end = received.indexOf("\r\n\r\n");
      const [, length] = /Content-Length: (\d+)/.exec(received.toString("utf8", 0, end)) ?? [];
      const [from, to] = [end + 4, end + 4 + Number(length)];
      if (end < 0 || received.length < to) return;
      take(JSON.parse(received.toString("utf8", from, to)) as Message);
      received = received.subarray(to);
    }
  });
  let requests = 0;
  return {
    notify: (method, params) => {
      send({ method, params });
    },
    request: (method, params) =>
      new Promise((resolve, reject) => {
        const id = requests++;
        asked.set(id, { resolve, reject });
        send({ id, method, params });
      }),
  };
}
