/** Certificate and key of a server that speaks https itself, renewed while it runs. */
// @ts-nocheck

import { readFile } from "node:fs/promises";
import { createSecureContext } from "node:tls";
import type { Result } from "../problem.js";
import type { Certificate } from "./http-server.js";
import { printOf } from "./scan.js";
import { attempt, type Trouble, troubleLine } from "./system-trouble.js";

/** Paths of PEM files. */
export interface CertificateFiles {
  readonly cert: string;
  readonly key: string;
}

/** Trouble: a file can't be read, or the two are no certificate with its key. */
export async function readCertificate(
  files: CertificateFiles,
): Promise<Result<Certificate, Trouble>> {
  const cert = await attempt(files.cert, () => readFile(files.cert, "utf8"));
  if (!cert.ok) return cert;
  const key = await attempt(files.key, () => readFile(files.key, "utf8"));
  if (!key.ok) return key;
  const value = { cert: cert.value, key: key.value };
  try {
    createSecureContext(value);
    return { ok: true, value };
  } catch {
    const message = `${files.cert} and ${files.key} are no certificate with its own key`;
    const mend =
      "give the certificate, with those above it, and its key without a password, as PEM";
    return { ok: false, problems: [{ code: "bad-certificate", message, mend }] };
  }
}

/** Our choice: who renews certificates does so weeks ahead. */
const usualRenewMs = 60_000;

/** Takes renewed files; where they are not in order the old ones stay, and it is told. Gives an end. */
export function followCertificate(
  files: CertificateFiles,
  take: (renewed: Certificate) => void,
  log: (line: string) => void,
  lookMs = usualRenewMs,
): () => void {
  const look = async (): Promise<string> =>
    (await Promise.all([printOf(files.cert), printOf(files.key)])).join("\n");
  let seen: string | undefined;
  const timer = setInterval(() => void follow(), lookMs).unref();
  const follow = async (): Promise<void> => {
    const now = await look();
    const before = seen;
    seen = now;
    if (before === undefined || before === now) return;
    const read = await readCertificate(files);
    if (read.ok) {
      take(read.value);
      log("the certificate was renewed");
    } else read.problems.map(troubleLine).forEach(log);
  };
  void follow();
  return () => {
    clearInterval(timer);
  };
}
