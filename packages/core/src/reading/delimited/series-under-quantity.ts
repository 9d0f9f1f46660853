import { swrWord } from "../forms/title-words.js";
import { besideSwr } from "../notes/note-columns.js";
import { type ColumnRole, isReading } from "../options/column-role.js";
import { roleFromHeader } from "../quantities/role-from-header.js";
import { NO_SERIES } from "./names-of-series.js";
import type { SeriesBeside } from "./stacked.js";
import type { TableColumn } from "./table-column.js";
import type { TableInHz } from "./table-in-hz.js";
import { MOST_SERIES } from "./table-of-series.js";

/** Where the name of a quantity at the head of a line ends: "SWR by antenna", "Quantity: SWR". */
const BEHIND_NAME =
  /(?:\s+(?:by|of|per|for|at|vs\.?|versus|against|along|over|readings?|measured|measurements?|comparison|compared|table|log|list|results?|data|sweeps?|curves?)(?!\p{L})|\s*[,;:–—]\s|\s+-\s).*$/iu;
const BEFORE_NAME =
  /^(?:(?:table|list|overview|comparison) of\s+|(?:quantity|parameter|measured|readings?|values?|all (?:columns|values))\s*(?:[:=]|(?:are|is)(?!\p{L}))\s*)/iu;

/** "Loop, SWR for three heights" */
const PARTED = /\s*[,;:–—]\s+|\s+-\s+/;

/**
 * Columns that are named by the antenna or the occasion alone, where the line above says of what quantity they all are: "SWR by
 * antenna" over "MHz, dipole, loop". Null where it does not, or where a column may be something else.
 */
export function underQuantity({ columns, index }: TableInHz, comments: readonly string[]): SeriesBeside | null {
  if (columns.some(({ role }) => isReading(role))) return null;
  const quantities = comments.flatMap((comment) => [comment, ...comment.split(PARTED).slice(1)].flatMap(quantityOf));
  const [role] = quantities;
  if (role === undefined || new Set(quantities.map(({ quantity }) => quantity)).size > 1) return null;
  const others = columns.filter((_, c) => c !== index);
  const areSeries = others.every(
    ({ name, isNamed, values }) =>
      isNamed &&
      name !== "" &&
      !/[Ω°%]|ohms?(?!\p{L})|dB(?!\p{L})|deg(?!\p{L})/iu.test(name) &&
      !NO_SERIES.test(name) &&
      !besideSwr().test(name) &&
      values.some(Number.isFinite) &&
      !(role.quantity === "swr" && values.some((value) => value < 1)),
  );
  if (!areSeries || others.length > MOST_SERIES) return null;
  const frequency = columns[index] as TableColumn;
  return {
    sets: others.map((column) => [frequency, column]),
    roles: [frequency.role, role],
    names: others.map(({ name }) => name),
  };
}

/** The quantity that a line names and no other, which one column tells a reflection by. */
function quantityOf(comment: string): readonly ColumnRole[] {
  const name = comment.replace(BEFORE_NAME, "").replace(BEHIND_NAME, "").trim();
  const said = /(?<!\p{L})(?:columns?|each|every)(?!\p{L})/iu.test(comment) && swrWord().test(comment);
  const role = roleFromHeader(said ? "SWR" : name);
  return role.quantity === "swr" || role.quantity === "return-loss" ? [role] : [];
}
