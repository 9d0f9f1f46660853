import { UsageError } from "@feedpoint/answers/asked/usage-error";
import type { Screen } from "../present/chart/charts.js";
import { glyphsFor } from "../present/chart/glyphs.js";
import type { RawCommon } from "./options.js";
import type { Output } from "./settings.js";

/** Where charts are drawn; null where none were asked for. @throws UsageError where there is no text to draw into */
export function screenFrom({ chart, ascii }: RawCommon, { format, width }: Output): Screen | null {
  if (chart !== true) return null;
  if (format !== "table") throw new UsageError(`--chart goes with the table, not with --format ${format}.`);
  return { width, glyphs: glyphsFor(ascii === true, process.env, process.platform) };
}
