// @ts-nocheck
import { Settings } from "luxon";
import fc from "fast-check";

// An invalid date is a bug in a test or in the program: never let one flow on quietly.
Settings.throwOnInvalid = true;

// A failing random case must be found again by the next run.
fc.configureGlobal({ seed: 20270301 });
