/** Of its own, so that it is fetched only when it is asked for. */
export { reasonsView } from "../outputs/index.js";
