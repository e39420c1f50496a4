export { startForm } from "./form.js";
