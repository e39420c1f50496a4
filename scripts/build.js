/** Makes `dist`: program and library, their types, the writing page, and the licences of what is in them. */
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildProgram } from "./build-program.js";
import { buildTypes } from "./build-types.js";
import { buildWeb } from "./build-web.js";
import { bundledPackages, writeLicences } from "./licences.js";

const dist = fileURLToPath(new URL("../dist", import.meta.url));
rmSync(dist, { recursive: true, force: true });
const [program, web] = await Promise.all([buildProgram(), buildWeb(), buildTypes()]);
writeLicences(bundledPackages({ ...program, ...web }));
