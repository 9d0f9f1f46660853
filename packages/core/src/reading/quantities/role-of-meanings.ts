import type { ColumnRole, Quantity } from "../options/column-role.js";
import type { Meaning } from "./header-words.js";

const scaled =
  (quantity: Quantity) =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => {
    if (meanings.has("kiloohm")) return { quantity, factor: 1000 };
    if (meanings.has("milliohm")) return { quantity, factor: 0.001 };
    if (meanings.has("microsiemens")) return { quantity, factor: 1e-6 };
    return meanings.has("millisiemens") ? { quantity, factor: 0.001 } : { quantity };
  };
const turned =
  (quantity: Quantity) =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => ({
    quantity,
    radians: meanings.has("radians"),
    ...(meanings.has("gons") ? { factor: DEGREES_IN_A_GON } : {}),
    ...(meanings.has("milliradians") ? { radians: true, factor: 0.001 } : {}),
    ...(meanings.has("turns") ? { factor: DEGREES_IN_A_TURN } : {}),
  });
/** A right angle has 100 gon. */
const DEGREES_IN_A_GON = 0.9;
const DEGREES_IN_A_TURN = 360;
/** A share of the forward power: of one where the header does not say per cent. */
const share =
  (quantity: Quantity) =>
  (meanings: ReadonlySet<Meaning>): ColumnRole =>
    meanings.has("percent") || !meanings.has("share")
      ? { quantity, percent: meanings.has("percent") }
      : { quantity, percent: true, factor: 100 };
/** A share of one where the header does not say per cent. */
const shareOfPower = (meanings: ReadonlySet<Meaning>): ColumnRole =>
  meanings.has("percent")
    ? { quantity: "reflected-power", percent: true }
    : { quantity: "reflected-power", percent: true, factor: 100 };
/** Powers that are compared with each other. */
const power =
  (quantity: "forward-power" | "reflected-power") =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => ({
    quantity,
    ...(quantity === "reflected-power" ? { percent: false } : {}),
    ...(meanings.has("milliwatts") ? { factor: 0.001 } : {}),
    ...(meanings.has("dbm") ? { isInDbm: true } : {}),
    ...(WATTS.some((unit) => meanings.has(unit)) ? { isInWatts: true } : {}),
  });
/** Voltages that are compared with each other. */
const voltage =
  (quantity: "forward-voltage" | "reflected-voltage") =>
  (meanings: ReadonlySet<Meaning>): ColumnRole => ({
    quantity,
    ...(meanings.has("millivolts") ? { factor: 0.001 } : {}),
  });
const plain = (quantity: Quantity) => (): ColumnRole => ({ quantity });
const assumed = (quantity: Quantity) => (): ColumnRole => ({ quantity, isAssumed: true });

/** The reactance of a part in series, by its size. */
const ofPart = (part: "capacitance" | "inductance", factor: number) => (): ColumnRole => ({
  quantity: "reactance",
  ofPart: part,
  factor,
});
const OHMS: readonly Meaning[] = ["ohm", "kiloohm", "milliohm"];
const SIEMENS: readonly Meaning[] = ["siemens", "millisiemens", "microsiemens"];
const WATTS = ["watts", "milliwatts", "dbm"] as const satisfies readonly Meaning[];
const ANGLES: readonly Meaning[] = ["degrees", "radians", "milliradians", "gons", "turns"];
const OF_REFLECTION: readonly Meaning[] = ["reflection", "coefficient", "voltage"];

/** What cells mean, by the meanings of their words; the first reading that fits counts. */
const READINGS: readonly {
  readonly needed: readonly Meaning[];
  readonly beside: readonly Meaning[];
  readonly role: (meanings: ReadonlySet<Meaning>) => ColumnRole;
}[] = [
  {
    needed: ["swr"],
    beside: [...OF_REFLECTION, "magnitude", "ohm", "standing", "wave", "ratio", "voltage"],
    role: plain("swr"),
  },
  { needed: ["standing", "wave"], beside: ["ratio", "coefficient", "voltage"], role: plain("swr") },
  { needed: ["mismatch", "loss"], beside: ["decibel"], role: plain("mismatch-loss") },
  { needed: ["mismatch", "decibel"], beside: [], role: plain("mismatch-loss") },
  { needed: ["mismatchLoss"], beside: ["decibel", "mismatch", "loss"], role: plain("mismatch-loss") },
  { needed: ["accepted", "power"], beside: ["percent", "share", "forward"], role: share("accepted-power") },
  {
    needed: ["reflected", "voltage", "percent"],
    beside: [],
    role: () => ({ quantity: "reflection-magnitude", percent: true }),
  },
  { needed: ["reflected", "voltage"], beside: ["millivolts"], role: voltage("reflected-voltage") },
  { needed: ["reflected", "millivolts"], beside: [], role: voltage("reflected-voltage") },
  { needed: ["reflectedVoltage"], beside: ["voltage", "millivolts"], role: voltage("reflected-voltage") },
  { needed: ["forward", "voltage"], beside: ["millivolts"], role: voltage("forward-voltage") },
  { needed: ["forward", "millivolts"], beside: [], role: voltage("forward-voltage") },
  { needed: ["forwardVoltage"], beside: ["voltage", "millivolts"], role: voltage("forward-voltage") },
  { needed: ["reflected", "power", "share"], beside: ["percent"], role: share("reflected-power") },
  { needed: ["reflection", "power", "share"], beside: ["percent"], role: share("reflected-power") },
  { needed: ["reflection", "share"], beside: ["magnitude", "coefficient"], role: share("reflected-power") },
  { needed: ["admittance", "angle"], beside: ANGLES, role: turned("admittance-angle") },
  { needed: ["admittance"], beside: [...SIEMENS, "magnitude"], role: scaled("admittance-magnitude") },
  { needed: ["returnLoss"], beside: ["decibel", "reflection"], role: plain("return-loss") },
  { needed: ["reflection", "loss"], beside: ["decibel"], role: plain("return-loss") },
  { needed: ["return", "loss"], beside: ["decibel", "reflection", "magnitude"], role: plain("return-loss") },
  { needed: ["forward"], beside: ["power", ...WATTS], role: power("forward-power") },
  ...WATTS.flatMap((unit) => [
    { needed: ["reflected", unit], beside: ["power"], role: power("reflected-power") } as const,
    { needed: ["ref", unit], beside: ["power"], role: power("reflected-power") } as const,
    { needed: ["reflection", unit], beside: ["power"], role: power("reflected-power") } as const,
  ]),
  { needed: ["ref", "power"], beside: [], role: power("reflected-power") },
  { needed: ["reflected"], beside: [], role: power("reflected-power") },
  { needed: ["reflection", "power", "coefficient"], beside: ["percent", "magnitude"], role: shareOfPower },
  {
    needed: ["reflection", "power"],
    beside: ["percent", "watts"],
    role: (meanings) => ({ quantity: "reflected-power", percent: meanings.has("percent") }),
  },
  {
    needed: ["reflected", "power", "percent"],
    beside: ["forward"],
    role: () => ({ quantity: "reflected-power", percent: true }),
  },
  {
    needed: ["reflected", "power"],
    beside: ["percent"],
    role: (meanings) => ({ quantity: "reflected-power", percent: meanings.has("percent") }),
  },
  { needed: ["reflected", "percent"], beside: [], role: () => ({ quantity: "reflected-power", percent: true }) },
  { needed: ["parallelResistance"], beside: [...OHMS, "parallel"], role: scaled("parallel-resistance") },
  { needed: ["parallelReactance"], beside: [...OHMS, "parallel"], role: scaled("parallel-reactance") },
  { needed: ["parallel", "resistance"], beside: OHMS, role: scaled("parallel-resistance") },
  { needed: ["parallel", "reactance"], beside: OHMS, role: scaled("parallel-reactance") },
  { needed: ["capacitance", "picofarads"], beside: [], role: ofPart("capacitance", 1e-12) },
  { needed: ["capacitance", "nanofarads"], beside: [], role: ofPart("capacitance", 1e-9) },
  { needed: ["inductance", "nanohenries"], beside: [], role: ofPart("inductance", 1e-9) },
  { needed: ["inductance", "microhenries"], beside: [], role: ofPart("inductance", 1e-6) },
  { needed: ["reactance", "magnitude"], beside: OHMS, role: scaled("reactance-magnitude") },
  { needed: ["reactance"], beside: [...OHMS, "imaginary", "impedance"], role: scaled("reactance") },
  { needed: ["resistance"], beside: [...OHMS, "real", "impedance"], role: scaled("resistance") },
  { needed: ["impedance", "angle"], beside: ANGLES, role: turned("impedance-angle") },
  { needed: ["impedance", "degrees"], beside: [], role: turned("impedance-angle") },
  { needed: ["impedance", "radians"], beside: [], role: turned("impedance-angle") },
  { needed: ["impedance", "real"], beside: OHMS, role: scaled("resistance") },
  { needed: ["impedance", "imaginary"], beside: OHMS, role: scaled("reactance") },
  { needed: ["admittance", "real"], beside: SIEMENS, role: scaled("conductance") },
  { needed: ["admittance", "imaginary"], beside: SIEMENS, role: scaled("susceptance") },
  { needed: ["impedance"], beside: [...OHMS, "magnitude"], role: scaled("impedance-magnitude") },
  { needed: ["real", "ohm"], beside: ["reflection"], role: scaled("resistance") },
  { needed: ["imaginary", "ohm"], beside: ["reflection"], role: scaled("reactance") },
  { needed: ["conductance"], beside: SIEMENS, role: scaled("conductance") },
  { needed: ["susceptance"], beside: SIEMENS, role: scaled("susceptance") },
  { needed: ["reflection", "angle"], beside: [...ANGLES, "coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "degrees"], beside: ["coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "radians"], beside: ["coefficient"], role: turned("reflection-angle") },
  { needed: ["reflection", "decibel"], beside: ["magnitude", "coefficient"], role: plain("s11-db") },
  { needed: ["reflection", "real"], beside: ["coefficient"], role: plain("reflection-real") },
  { needed: ["reflection", "imaginary"], beside: ["coefficient"], role: plain("reflection-imaginary") },
  { needed: ["reflection", "magnitude"], beside: ["coefficient"], role: plain("reflection-magnitude") },
  {
    needed: ["reflection", "percent"],
    beside: ["coefficient", "magnitude", "voltage"],
    role: (meanings) => ({
      quantity: "reflection-magnitude",
      percent: true,
      // Of the voltage, or of the power.
      isAssumed: !meanings.has("coefficient") && !meanings.has("magnitude") && !meanings.has("voltage"),
    }),
  },
  { needed: ["reflection"], beside: ["coefficient", "voltage"], role: plain("reflection") },
  { needed: ["decibel"], beside: ["magnitude"], role: assumed("s11-db") },
  { needed: ["angle"], beside: ANGLES, role: turned("angle") },
  { needed: ["degrees"], beside: [], role: turned("angle") },
  { needed: ["radians"], beside: [], role: turned("angle") },
  { needed: ["real"], beside: [], role: assumed("real") },
  { needed: ["imaginary"], beside: [], role: assumed("imaginary") },
  { needed: ["magnitude"], beside: [], role: assumed("reflection-magnitude") },
];

/** What a column holds whose name has words of these meanings and no other: the first reading that fits; null where none does. */
export function roleOfMeanings(meanings: ReadonlySet<Meaning>): ColumnRole | null {
  const says = (needed: readonly Meaning[], beside: readonly Meaning[]) =>
    needed.every((meaning) => meanings.has(meaning)) &&
    [...meanings].every((meaning) => needed.includes(meaning) || beside.includes(meaning));
  return READINGS.find(({ needed, beside }) => says(needed, beside))?.role(meanings) ?? null;
}
