/** The last forms that were sent to a garden, with what became of them: each is written once. */
import { createHash } from "node:crypto";
import { mkdir } from "node:fs/promises";
import type { WrittenLately } from "../outputs/index.js";
import type { Fields } from "../ticks/index.js";
import { writeWhole } from "../write-whole.js";
import type { Outcome } from "./garden-writer.js";
import { readState, statePath } from "./state-file.js";

export interface SentForm {
  readonly id: string;
  /** Of its fields: another form under the same id is none of its copies. */
  readonly hash: string;
  readonly outcome: Outcome;
  /** It took another form back: there is nothing to take back of it. */
  readonly isUndo?: true;
  readonly isTakenBack?: true;
}

/** Our choice, for each garden: two seasons of ticks. */
const mostForms = 500;
const mostUndo = 10;

export interface FormsRead {
  /** The newest last. */
  readonly forms: readonly SentForm[];
  readonly notice?: string;
}

/** The file in the state folder; who reads it to write it anew holds its lock. */
export function formsPath(stateDir: string, file: string): string {
  return statePath(stateDir, file, ".forms.json");
}

/** A damaged file is moved aside, told of, and taken as none. */
export async function readForms(stateDir: string, file: string): Promise<FormsRead> {
  const path = formsPath(stateDir, file);
  const { value = [], notice } = await readState(path, (read) => formsIn(read, file));
  return { forms: value, ...(notice === undefined ? {} : { notice }) };
}

/** Whole or not at all. Throws the system's errors. */
export async function writeForms(
  stateDir: string,
  file: string,
  forms: readonly SentForm[],
): Promise<void> {
  await mkdir(stateDir, { recursive: true, mode: 0o700 });
  const text = JSON.stringify({ formsVersion: 1, file, forms });
  await writeWhole(formsPath(stateDir, file), text, { isOurs: true, mode: 0o600 });
}

/** Without the oldest, and without the edits of those that are no longer taken back. */
export function withForm(forms: readonly SentForm[], form: SentForm): SentForm[] {
  const next = [...forms.filter(({ id }) => id !== form.id), form].slice(-mostForms);
  const undoable = new Set(lastWritten(next));
  return next.map((one) =>
    one.outcome.kind === "written" && !undoable.has(one)
      ? { ...one, outcome: { ...one.outcome, undo: [] } }
      : one,
  );
}

/** The last ten written, the newest first. */
export function lately(forms: readonly SentForm[]): WrittenLately[] {
  return lastWritten(forms)
    .reverse()
    .flatMap(({ id, outcome, isTakenBack = false }) => {
      if (outcome.kind !== "written") return [];
      const canTakeBack = !isTakenBack && outcome.undo.length > 0;
      return [
        { form: id, told: outcome.told, canTakeBack, ...(isTakenBack ? { isTakenBack } : {}) },
      ];
    });
}

function lastWritten(forms: readonly SentForm[]): SentForm[] {
  return forms
    .filter(({ outcome, isUndo }) => outcome.kind === "written" && isUndo === undefined)
    .slice(-mostUndo);
}

export function hashOfFields(fields: Fields): string {
  return createHash("sha256").update(JSON.stringify(fields)).digest("base64url");
}

function formsIn(value: unknown, file: string): readonly SentForm[] | undefined {
  const read = value as { formsVersion?: unknown; file?: unknown; forms?: unknown } | undefined;
  if (read?.formsVersion !== 1 || read.file !== file || !Array.isArray(read.forms))
    return undefined;
  return read.forms.every(isForm) ? read.forms : undefined;
}

function isForm(value: unknown): value is SentForm {
  const { id, hash, outcome } = (value ?? {}) as Partial<SentForm>;
  return typeof id === "string" && typeof hash === "string" && isOutcome(outcome);
}

function isOutcome(value: unknown): value is Outcome {
  const outcome = (value ?? {}) as Record<string, unknown>;
  switch (outcome.kind) {
    case "written":
      return typeof outcome.told === "string" && Array.isArray(outcome.undo);
    case "already":
      return typeof outcome.told === "string";
    case "conflict":
      return typeof outcome.now === "string" && typeof outcome.wanted === "string";
    default:
      return outcome.kind === "refused" && Array.isArray(outcome.told);
  }
}
