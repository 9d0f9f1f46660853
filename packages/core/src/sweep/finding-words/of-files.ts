import { counted, type FindingKind, firstOf } from "./kind.js";

type Named = {
  /** A name from the file, in quotes and fit to be shown */
  readonly name: string;
};

const STATED_WHERE = {
  cells: "The cells themselves state",
  "option-line": "The option line states",
  header: "The header states",
} as const;

/** What is noticed while a file is read. */
export const FILE_FINDINGS = {
  encoding: {
    meaning: "The text is not UTF-8; it was read in the encoding named.",
    words: ({ encoding }: { encoding: string }) => `Read as ${encoding}.`,
  },
  "reference-assumed": {
    meaning: "The file states no reference impedance; 50 Ω was assumed.",
    words: ({ ohms }: { ohms: number }) => `Reference impedance taken as ${ohms} Ω; the file states none.`,
  },
  "complex-cells": {
    meaning: "Complex numbers in one cell were split into real and imaginary part.",
    words: () => "Complex numbers that stand in one cell were split into real and imaginary part.",
  },
  "units-in-cells": {
    meaning: "Units stand beside the numbers in their cells and were read with them.",
    words: ({ units }: { units: readonly string[] }) => `Units stand beside the numbers: ${units.join(", ")}.`,
  },
  "thousands-marked": {
    meaning: "Marks between the thousands of numbers were left out.",
    words: ({ mark }: { mark: string }) => `The marks between thousands (7${mark}100${mark}000) were left out.`,
  },
  "series-untold": {
    meaning: "A file holds several sweeps of the same frequencies, and does not say how they differ.",
    words: ({ count }: { count: number }) =>
      `The file holds ${count} sweeps of the same frequencies, and nothing says how they differ: two antennas, or before and after?`,
  },
  "reference-read": {
    meaning: "The file states its reference impedance, which was used.",
    words: ({ text, ohms }: { text: string; ohms: number }) =>
      `Reference impedance ${ohms} Ω, as the file states: ${text}.`,
  },
  "reference-stated": {
    meaning: "The file states its reference impedance, so the one given was not used.",
    words: ({ ohms }: { ohms: readonly number[] }) =>
      `The file itself states ${ohms.join(", ")} Ω; the reference impedance that was given was not used.`,
  },
  "unit-stated": {
    meaning: "The file itself states the unit of frequency, so that the one given was not used.",
    words: ({ where, unit, given }: { where: keyof typeof STATED_WHERE; unit: string; given: string }) =>
      `${STATED_WHERE[where]} ${unit}; ${given}, as ${where === "header" ? "the lines above it say" : "was given"}, was not used.`,
  },
  "reference-mentioned": {
    meaning: "The text mentions a reference impedance, which was not taken at its word.",
    words: ({ text, ohms }: { text: string; ohms: number | null }) =>
      ohms === null
        ? `A comment speaks of an impedance (${text}); comments are never taken for the reference.`
        : `The text says ${text}: the readings may refer to ${ohms} Ω.`,
  },
  "reflection-assumed": {
    meaning: "A column does not say of what; it was read as a reflection.",
    words: ({ name, readAs }: Named & { readAs: "reflection" | "angle" | "magnitude" | "dB" | "power" }) => {
      if (readAs === "power") return `${name} does not say of what; it was read as a share of the power.`;
      if (readAs === "reflection") return `${name} does not say of what; it was read as a reflection.`;
      if (readAs === "angle") return `${name} does not say of what; it was read as that of the reflection.`;
      return `${name} names no unit; it was read as ${readAs === "dB" ? "dB" : "a magnitude"}.`;
    },
  },
  "angle-unit-assumed": {
    meaning: "Angles without a unit were read as degrees, though they could be radians.",
    words: ({ name, largest, other }: Named & { largest: number; other: "radians" | "gons" }) =>
      other === "gons"
        ? `${name} was read in degrees; its unit may also mean gons, of which a turn has 400.`
        : `${name} was read in degrees, but none is larger than ${largest}: they may be radians.`,
  },
  "name-contradicts-ports": {
    meaning: "The file's name says another number of ports than it holds.",
    words: ({ named, held }: { named: number; held: number }) =>
      `The file's name says ${counted(named, "port")}, its rows hold ${held}.`,
  },
  "format-doubtful": {
    meaning: "The numbers look like another Touchstone format than the option line states.",
    words: ({ largestDegrees }: { largestDegrees: number }) =>
      `All angles lie within ${largestDegrees} degrees; the numbers may be real and imaginary parts (RI), or the angles radians.`,
  },
  "negative-magnitude": {
    meaning: "Magnitudes with negative sign: the number format may be another than stated.",
    words: () => "Some magnitudes are negative; the numbers may be real and imaginary parts (RI) instead.",
  },
  "maybe-not-normalised": {
    meaning: "Touchstone 1 impedances so large, or admittances so small, that they may be ohms or siemens already.",
    words: ({ what }: { what: "impedances" | "admittances" }) =>
      what === "impedances"
        ? "Touchstone 1 impedances are multiples of the reference; these are so large that they may be ohms already."
        : "Touchstone 1 admittances are multiples of the reference's; these are so small that they may be siemens already.",
  },
  "frequency-implausible": {
    meaning: "Frequencies at which no antenna is swept: the unit may be wrong.",
    words: ({ greatestHz }: { greatestHz: number }) =>
      `Frequencies around ${greatestHz} Hz: the unit in the option line may be wrong.`,
  },
  "frequency-unit-default": {
    meaning: "A Touchstone option line without a unit means GHz.",
    words: () => "The option line names no unit of frequency, so it is GHz by the rule.",
  },
  "frequency-unit-inferred": {
    meaning: "The unit of frequency was told from the size of the numbers.",
    words: ({ unit }: { unit: string }) => `No unit of frequency is stated; the size of the numbers says ${unit}.`,
  },
  "option-line-repaired": {
    meaning: "A blank missing in a Touchstone option line was supplied.",
    words: ({ word }: { word: string }) => `A blank is missing in the option line at ${word}; read as meant.`,
  },
  "second-option-line": {
    meaning: "A second option line was ignored, as the specification wants.",
    words: ({ text }: { text: string | null }) =>
      text === null
        ? "Ignored a second option line; the first one counts."
        : `A second option line, ${text}, states something else than the first. By the rule it is ignored, so that what follows it is misread if it holds: were two sweeps put into one file? Give each a file of its own.`,
  },
  "one-port-of-many": {
    meaning: "One port's reflection was taken from a file of several ports.",
    words: ({ port, ports }: { port: number; ports: number }) =>
      `Read S${port}${ports > 9 ? "," : ""}${port} of a ${ports}-port file: the reflection at port ${port}, the other ports ended in their references.`,
  },
  "placeholder-values": {
    meaning: "All values are practically zero, as in a parameter that was not measured.",
    words: () => "Every reflection is practically zero: this looks like a placeholder, not a measurement.",
  },
  "noise-data-skipped": {
    meaning: "Noise parameters after the network data were skipped.",
    words: ({ lines }: { lines: number }) => `Skipped ${lines} lines of noise data.`,
  },
  "unknown-keyword": {
    meaning: "A keyword that the specification does not know was ignored.",
    words: ({ text }: { text: string }) => `Ignored the unknown keyword ${text}.`,
  },
  "count-mismatch": {
    meaning: "The file states another number of frequencies, or of references, than it holds.",
    words: ({ of, stated, held }: { of: "frequencies" | "references"; stated: number; held: number }) =>
      of === "frequencies"
        ? `The file says ${stated} frequencies and holds ${held}; all ${held} were read.`
        : `[Reference] gives one value for ${held} ports; it was used for all.`,
  },
  "text-after-end": {
    meaning: "Text after [End] was ignored.",
    words: () => "Ignored what follows [End].",
  },
  "last-row-cut": {
    meaning: "The last row is incomplete, as in a file cut off; it was left out.",
    words: ({ held, wanted }: { held: number; wanted: number }) =>
      `Left out the last row: it holds ${held} of ${wanted} numbers, so the file seems cut off.`,
  },
  "last-number-cut": {
    meaning: "The file ends in the midst of a line, so its last number may be cut off; it was read as it stands.",
    words: ({ text }: { text: string }) =>
      `The file ends with ${text} and no line break: its last number may be cut off. It was read as it stands.`,
  },
  "row-without-number": {
    meaning: "Rows without a usable number were left out.",
    words: ({ firstLine, count }: { firstLine: number; count: number }) =>
      `Left out ${firstOf(firstLine, count)}: no usable number there.`,
  },
  "row-left-out": {
    meaning: "Lines among the data that are no rows of numbers were left out.",
    words: ({ firstLine, count, text }: { firstLine: number; count: number; text: string | null }) =>
      text === null
        ? `Left out ${firstOf(firstLine, count)}: not a row of numbers like the others.`
        : `${text} is no reading and was left out.`,
  },
  "block-left-out": {
    meaning: "Only the first of several blocks of numbers was read.",
    words: () => "Only the first block of numbers was read; another one begins here.",
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
