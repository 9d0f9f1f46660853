import { grouped } from "../../numbers/grouped.js";

/** A factor of the log as a fit takes it: a number, or levels of which each differs from the first. */
export interface Factor {
  readonly name: string;
  /** One for each effect: what it is, as "1 m more" or "rain against dry", and its values */
  readonly effects: readonly { readonly of: string; readonly column: readonly number[] }[];
  /** What each sweep says, for saying which combination is missing */
  readonly levels: readonly string[];
}

const NUMBER = /^\s*([-−]?\d+(?:[.,]\d+)?)\s*([a-zµ°%]*)\s*$/i;
/** With fewer different numbers than this a factor is one of levels (our own choice). */
const FEWEST_NUMBERS = 3;

/**
 * What the log says under a column, of some sweeps, as columns of a fit: numbers with one unit as they are, else a level each, the most
 * frequent one being what the others are held against.
 *
 * @param said one for each sweep, none of them empty
 * @returns null where all say the same
 */
export function factorOf(name: string, said: readonly string[]): Factor | null {
  const texts = said.map((text) => text.trim().toLowerCase());
  const values = new Set(texts);
  if (values.size < 2) return null;
  const matches = said.map((text) => NUMBER.exec(text));
  const units = new Set(matches.map((match) => match?.[2]?.toLowerCase()));
  if (matches.every((match) => match !== null) && units.size === 1 && values.size >= FEWEST_NUMBERS) {
    const column = matches.map((match) => Number((match?.[1] ?? "").replace(",", ".").replace("−", "-")));
    const [unit] = units;
    return { name, effects: [{ of: `1${unit ? ` ${unit}` : ""} more`, column }], levels: said };
  }
  const counts = [...grouped(texts, (text) => text)].sort((a, b) => b[1].length - a[1].length);
  const [base = "", ...others] = counts.map(([text]) => text);
  const asWritten = (level: string) => said[texts.indexOf(level)]?.trim() ?? level;
  return {
    name,
    effects: others.map((level) => ({
      of: `${asWritten(level)} against ${asWritten(base)}`,
      column: texts.map((text) => Number(text === level)),
    })),
    levels: said,
  };
}
