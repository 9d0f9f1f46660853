import { type Complex, complex, fromPolarDegrees } from "../../numbers/complex.js";
import { reflectionFromAdmittance, reflectionFromImpedance } from "../../reflection/impedance.js";
import { reflectionMagnitudeFromReturnLoss, reflectionMagnitudeFromSwr } from "../../reflection/swr.js";
import type { Quantity } from "../options/column-role.js";
import type { Determination, NumberColumn } from "./determination.js";

/** Ways from one column to ρ. */
const MAGNITUDES: readonly {
  quantity: Quantity;
  title: string;
  rho: (value: number, column: NumberColumn) => number;
}[] = [
  {
    quantity: "reflection-magnitude",
    title: "reflection magnitude",
    rho: (value, { percent }) => (percent ? value / 100 : value),
  },
  { quantity: "reflected-voltage", title: "reflected voltage", rho: (value) => value },
  { quantity: "s11-db", title: "S11 in dB", rho: (value) => 10 ** (value / 20) },
  { quantity: "return-loss", title: "return loss", rho: reflectionMagnitudeFromReturnLoss },
  { quantity: "swr", title: "SWR", rho: reflectionMagnitudeFromSwr },
  { quantity: "reflected-power", title: "reflected power", rho: (value) => Math.sqrt(value / 100) },
  { quantity: "accepted-power", title: "accepted power", rho: (value) => Math.sqrt(1 - value / 100) },
  { quantity: "mismatch-loss", title: "mismatch loss", rho: (value) => Math.sqrt(1 - 10 ** (-value / 10)) },
];

/** A way from two columns to Γ. */
interface Pair {
  readonly quantities: readonly [Quantity, Quantity];
  readonly title: string;
  readonly reflection: (
    first: number,
    second: number,
    referenceOhms: number,
    columns: readonly NumberColumn[],
  ) => Complex;
}

/** Pairs that give Γ as a complex number. */
const PAIRS: readonly Pair[] = [
  {
    quantities: ["reflection-real", "reflection-imaginary"],
    title: "real and imaginary part of the reflection",
    reflection: (real, imaginary) => complex(real, imaginary),
  },
  {
    quantities: ["resistance", "reactance"],
    title: "R and X",
    reflection: (r, x, z0) => reflectionFromImpedance(complex(r, x), z0),
  },
  {
    quantities: ["impedance-magnitude", "impedance-angle"],
    title: "|Z| and its angle",
    reflection: (size, angle, z0, [, column]) =>
      reflectionFromImpedance(fromPolarDegrees(size, inDegrees(angle, column)), z0),
  },
  {
    quantities: ["parallel-resistance", "parallel-reactance"],
    title: "parallel R and X",
    reflection: (r, x, z0) => reflectionFromAdmittance(complex(1 / r, -1 / x), z0),
  },
  {
    quantities: ["admittance-magnitude", "admittance-angle"],
    title: "|Y| and its angle",
    reflection: (size, angle, z0, [, column]) =>
      reflectionFromAdmittance(fromPolarDegrees(size, inDegrees(angle, column)), z0),
  },
  {
    quantities: ["conductance", "susceptance"],
    title: "G and B",
    reflection: (g, b, z0) => reflectionFromAdmittance(complex(g, b), z0),
  },
];

/** Pairs that give its size alone. */
const PAIRS_WITHOUT_SIGN: readonly Pair[] = [
  {
    quantities: ["resistance", "reactance-magnitude"],
    title: "R and |X|",
    reflection: (r, x, z0) => reflectionFromImpedance(complex(r, Math.abs(x)), z0),
  },
  {
    quantities: ["impedance-magnitude", "resistance"],
    title: "|Z| and R",
    reflection: (size, r, z0) => reflectionFromImpedance(complex(r, sideOf(size, r)), z0),
  },
  {
    quantities: ["impedance-magnitude", "impedance-angle-magnitude"],
    title: "|Z| and the size of its angle",
    reflection: (size, angle, z0, [, column]) =>
      reflectionFromImpedance(fromPolarDegrees(size, inDegrees(angle, column)), z0),
  },
];

const inDegrees = (angle: number, column: NumberColumn | undefined) =>
  column?.radians ? (angle * 180) / Math.PI : angle;

/** Every way in which the columns at hand determine a reflection, complex ones first. */
export function determinationsOf(given: readonly NumberColumn[], referenceOhms: number): readonly Determination[] {
  const columns = given.map((column) => (column.isNormalised ? inUnits(column, referenceOhms) : column));
  const find = (quantity: Quantity) => columns.find((column) => column.quantity === quantity);
  const pairsOf = (ways: readonly Pair[], tellSigns: boolean) =>
    ways.flatMap(({ quantities, title, reflection }): readonly Determination[] => {
      const [first, second] = quantities.map(find);
      if (first === undefined || second === undefined) return [];
      const pair = [first, second];
      const gamma = (a: number, b: number) => reflection(a, b, referenceOhms, pair);
      if (tellSigns && !first.isUnsigned && !second.isUnsigned)
        return [{ columns: pair, isVector: true, title, reflection: gamma }];
      const suffix = tellSigns ? ", without their signs" : "";
      return [{ columns: pair, isVector: false, title: title + suffix, reflection: (a, b) => scalar(gamma(a, b)) }];
    });
  const found = pairsOf(PAIRS, true);
  const forward = find("forward-power");
  const reflected = find("reflected-power");
  if (forward !== undefined && reflected !== undefined && !reflected.percent) {
    const reflection = (sent: number, back: number) => complex(Math.sqrt(back / sent), 0);
    found.push({ columns: [forward, reflected], isVector: false, title: "forward and reflected power", reflection });
  }
  const sent = find("forward-voltage");
  const back = find("reflected-voltage");
  if (sent !== undefined && back !== undefined) {
    const reflection = (out: number, returned: number) => complex(returned / out, 0);
    found.push({ columns: [sent, back], isVector: false, title: "forward and reflected voltage", reflection });
  }
  const angle = find("reflection-angle");
  const magnitudes = MAGNITUDES.flatMap(({ quantity, title, rho }) => {
    const column = find(quantity);
    // Beside what went out it is no share of it.
    const isOfPair =
      (quantity === "reflected-power" && (forward !== undefined || column?.isInWatts)) ||
      (quantity === "reflected-voltage" && sent !== undefined);
    return column === undefined || isOfPair ? [] : [{ column, title, rho }];
  });
  for (const { column, title, rho } of magnitudes) {
    if (angle === undefined) break;
    found.push({
      columns: [column, angle],
      isVector: true,
      title: `${title} and angle`,
      reflection: (value, turn) => fromPolarDegrees(rho(value, column), inDegrees(turn, angle)),
    });
  }
  const alone = magnitudes.map(({ column, title, rho }): Determination => {
    const reflection = (value: number) => complex(rho(value, column), 0);
    return { columns: [column], isVector: false, title, reflection };
  });
  return [...found, ...pairsOf(PAIRS_WITHOUT_SIGN, false), ...alone];
}

/** The size of the reactance of an impedance whose size and resistance are known; rounding may leave the first below the second. */
const sideOf = (size: number, resistance: number): number => Math.sqrt(Math.max(0, size ** 2 - resistance ** 2));

/** Multiples of the reference impedance in ohms; of its inverse in siemens. */
function inUnits(column: NumberColumn, referenceOhms: number): NumberColumn {
  const isAdmittance = ["conductance", "susceptance", "admittance-magnitude"].includes(column.quantity);
  const factor = isAdmittance ? 1 / referenceOhms : referenceOhms;
  return { ...column, values: column.values.map((value) => value * factor), isNormalised: false };
}

const scalar = ({ real, imaginary }: Complex): Complex => complex(Math.hypot(real, imaginary), 0);
