/**
 * What the command `feedpoint` needs of the library's own tools. Not part of the public surface: these have nothing to do with
 * sweeps, and change without notice.
 */
export { lookUp } from "./input/look-up.js";
export { suggestion } from "./input/nearest.js";
export { printableText } from "./input/printable.js";
export { LOG_FILE } from "./jobs/season/deployment-log.js";
