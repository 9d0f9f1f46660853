/**
 * What the command `feedpoint` needs of the library's own tools. Not part of the public surface: these tell nothing of
 * antennas, and change without notice.
 */
export { drawnSweep } from "./bands/drawn-sweep.js";
export { lookUp } from "./input/look-up.js";
export { suggestion } from "./input/nearest.js";
export { printableText } from "./input/printable.js";
export { LOG_FILE } from "./jobs/season/deployment-log.js";
export { grouped } from "./numbers/grouped.js";
