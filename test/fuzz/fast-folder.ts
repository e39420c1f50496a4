/** Where thousands of files are written and gone again: memory, where the system has such a folder. */
import { existsSync } from "node:fs";
import { tmpdir } from "node:os";

export const fastFolder = existsSync("/dev/shm") ? "/dev/shm" : tmpdir();
