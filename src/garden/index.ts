export * from "./garden.js";
