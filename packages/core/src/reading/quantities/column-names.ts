import type { ColumnRole, Quantity } from "../options/column-role.js";
import { type FrequencyUnit, frequencyUnitOf } from "../options/units.js";
import { QUANTITIES, type QuantityRecord } from "./quantities.js";

/** The names that `--columns` takes, and what each means. */
const COLUMN_NAMES: ReadonlyMap<string, Quantity> = new Map(
  (Object.keys(QUANTITIES) as Quantity[]).flatMap((quantity) => {
    const { columnName } = QUANTITIES[quantity];
    return columnName === undefined ? [] : [[columnName, quantity] as const];
  }),
);

/** What may stand behind a name and a colon, in small letters, and what it says of the numbers; by the unit that the quantity has. */
const UNITS: Readonly<
  Partial<Record<NonNullable<QuantityRecord["unit"]>, Readonly<Record<string, Partial<ColumnRole>>>>>
> = {
  ohm: { ohm: {}, kohm: { factor: 1e3 } },
  siemens: { s: {}, ms: { factor: 1e-3 }, us: { factor: 1e-6 } },
  angle: { deg: {}, rad: { radians: true } },
  share: { percent: { percent: true } },
  decibel: { db: {} },
};

/**
 * Reads what the user says of the columns: names from the left, the frequency with its unit ("frequency:MHz,r,x"), an angle
 * with :rad where it is in radians, a share with :percent, ohms with :kOhm and siemens with :mS or :uS where they are in those.
 *
 * Names: frequency, r, x, abs-x, z, z-angle, parallel-r, parallel-x, g, b, swr, return-loss, s11-db, rho, angle, real,
 * imaginary, reflected-power, forward-power, reflected-voltage, forward-voltage, accepted-power, mismatch-loss, y, y-angle, and skip for a column that is left alone.
 *
 * @throws TypeError naming the word that is not known and those that are
 * @example
 * ```ts
 * import { parseColumnRoles, readSweeps } from "@feedpoint/core";
 *
 * const columns = parseColumnRoles("frequency:MHz,r,x");
 * const [sweep] = readSweeps("7.0 40 -12\n7.1 46 3\n7.2 53 19\n", { columns });
 * sweep.kind; // → "vector"
 * ```
 */
export function parseColumnRoles(text: string): readonly ColumnRole[] {
  return text.split(",").map((part) => {
    const [name = "", unit] = part.trim().toLowerCase().split(":");
    const quantity = COLUMN_NAMES.get(name);
    if (quantity === undefined) {
      throw new TypeError(`"${name}" is no column name; use ${[...COLUMN_NAMES.keys()].join(", ")}`);
    }
    if (quantity === "frequency") {
      const frequencyUnit = unit === undefined ? null : frequencyUnitOf(unit);
      if (unit !== undefined && frequencyUnit === null)
        throw new TypeError(`"${unit}" is no unit of frequency; use Hz, kHz, MHz or GHz`);
      return { quantity, frequencyUnit };
    }
    const isShare = quantity === "reflected-power" || quantity === "accepted-power";
    return { quantity, radians: false, percent: isShare, ...(unit === undefined ? {} : unitOf(quantity, name, unit)) };
  });
}

/** @throws TypeError where the quantity is not given in that unit */
function unitOf(quantity: Quantity, name: string, unit: string): Partial<ColumnRole> {
  const units = UNITS[QUANTITIES[quantity].unit ?? "hertz"] ?? {};
  const said = units[unit];
  if (said !== undefined) return said;
  const known = Object.keys(units);
  throw new TypeError(
    `"${unit}" is no unit of ${name}; ${known.length === 0 ? "it takes none" : `use ${known.join(", ")}, or none`}`,
  );
}

/**
 * What to say of the columns with `--columns`: what is known of each, and for some what they may hold.
 *
 * @param given by their places, what columns may hold
 */
export function columnsText(
  roles: readonly ColumnRole[],
  unit: FrequencyUnit,
  given: ReadonlyMap<number, string> = new Map(),
): string {
  const texts = roles.map(({ quantity, radians, percent }, place) => {
    const told = given.get(place);
    if (told !== undefined) return told;
    if (quantity === "frequency") return `frequency:${unit}`;
    const name = QUANTITIES[quantity].columnName ?? "skip";
    return name + (radians ? ":rad" : percent && quantity === "reflection-magnitude" ? ":percent" : "");
  });
  return `--columns ${texts.join(",")}`;
}

/** What a single column of readings may hold, by the unit that stands in its name. */
export const guessedReading = (name: string): string =>
  /(?<!\p{L})dB(?!\p{L})/iu.test(name) ? "return-loss" : name.includes("%") ? "reflected-power" : "swr";

/**
 * The same where nothing is known but where the frequencies stand: SWR or what its unit says for one column of readings, R and X for more.
 */
export function guessedColumns(
  roles: readonly ColumnRole[],
  unit: FrequencyUnit,
  names: readonly string[] = [],
): string {
  const first = roles.findIndex(({ quantity }) => quantity === "frequency");
  const unknown = roles.flatMap((_, place) => (place === first ? [] : [place]));
  const guesses =
    unknown.length === 1
      ? [guessedReading(names[unknown[0] ?? 0] ?? "")]
      : ["r", "x", ...unknown.slice(2).map(() => "skip")];
  return columnsText(roles, unit, new Map(unknown.map((place, i) => [place, guesses[i] ?? "skip"])));
}
