export type { Published } from "./published.js";
