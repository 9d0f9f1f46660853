import { at } from "../../numbers/column.js";
import type { Complex } from "../../numbers/complex.js";
import type { Quantity } from "../options/column-role.js";

/** A column of a delimited text as numbers (NaN where a cell holds none) and how finely it is printed. */
export interface NumberColumn {
  /** Its place among the columns of its table */
  readonly place: number;
  readonly quantity: Quantity;
  /** The header's cell, or a description where there is none */
  readonly name: string;
  readonly values: Float64Array;
  /** Half of one unit in the last printed place, the median over the rows; told when asked, for few files need it */
  readonly halfUnit: () => number;
  /** Where the instrument's scale ended: values there mean "at least"; null where it did not */
  readonly ceiling: number | null;
  /** The header does not say that it is a reflection; it was assumed */
  readonly isAssumed: boolean;
  readonly radians: boolean;
  readonly percent: boolean;
  /** Multiples of the reference impedance, or of its inverse */
  readonly isNormalised: boolean;
  /** The least or the greatest of several readings */
  readonly isExtreme: boolean;
  /** A power by itself, and no share of another */
  readonly isInWatts: boolean;
  /** Its signs seem lost: with another column it tells the size of the reflection alone */
  readonly isUnsigned: boolean;
}

/** A set of columns that determines Γ, or only ρ, in every row. */
export interface Determination {
  /** One or two */
  readonly columns: readonly NumberColumn[];
  readonly isVector: boolean;
  /** For a person: "R and X" */
  readonly title: string;
  /** Γ (for a scalar: ρ and 0) from a value of the first column and one of the second, where there are two */
  readonly reflection: (first: number, second: number) => Complex;
}

/** Γ (for a scalar: ρ and 0) in a row. */
export function reflectionAt({ columns, reflection }: Determination, row: number): Complex {
  const [first, second] = columns;
  return reflection(at((first as NumberColumn).values, row), second === undefined ? 0 : at(second.values, row));
}
