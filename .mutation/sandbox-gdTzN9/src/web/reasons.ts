/** Of its own, so that it is fetched only when it is asked for. */
// @ts-nocheck

export { reasonsView } from "../outputs/index.js";
