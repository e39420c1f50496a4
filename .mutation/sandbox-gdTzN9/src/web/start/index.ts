// @ts-nocheck
export { startForm } from "./form.js";
