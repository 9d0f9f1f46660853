import { counted, type FindingKind, listed } from "./kind.js";

const REASONS = {
  swapped: () => "They agree with R and X exchanged: the columns seem to be swapped.",
  unknown: () => "A column may have a wrong unit or another meaning than its name says.",
  reference: (ohms: number) => `They agree at ${ohms} Ω: the file's reference impedance seems to be that.`,
};

/** Two ways to the reflection that differ: in its size, with the likely reason, or in its phase alone. */
type Disagreement = {
  /** What was used, in words: "R and X" */
  readonly used: string;
  readonly other: string;
  readonly part: "size" | "phase";
  /** In ρ, or in Γ where the phase alone differs */
  readonly difference: number;
  /** Ω at which they agree */
  readonly reason: keyof typeof REASONS;
  readonly agreeAtOhms: number | null;
};

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What is noticed of the readings that a file holds. */
export const READING_FINDINGS = {
  saturated: {
    meaning: 'The instrument\'s scale ended: its greatest reading means "at least".',
    words: ({ name, ceiling }: { name: string | null; ceiling: number | null }) => {
      if (name === null)
        return `SWR is marked as "more than": readings from ${ceiling?.toFixed(1)} on mean "at least".`;
      return ceiling === null
        ? `${name} is off its scale in some rows: the SWR there counts as infinite.`
        : `${name} ends at ${ceiling}: readings there mean "at least ${ceiling}".`;
    },
  },
  "spot-readings": {
    meaning: "The file holds single readings, not a curve: nothing is known between them.",
    words: ({ count }: { count: number }) =>
      count === 1
        ? "A single reading, not a curve: nothing is known beside it."
        : `${count} single readings, not a curve: nothing is known between them.`,
  },
  "spot-band": {
    meaning: "A reading that names only its band is taken for the whole of the band.",
    words: () => "Some readings name bands, not frequencies: each is taken for the whole of its band.",
  },
  "cells-remarked": {
    meaning: "Cells hold a remark beside their number, or a mark out of place; the number was taken.",
    words: ({ text, count }: { text: string; count: number }) =>
      `${counted(count, "cell holds", "cells hold")} more than a number (the first ${text}); the number was taken.`,
  },
  "companion-files": {
    meaning: "Two files that each hold one part of the reflection were read as one sweep.",
    words: ({ count }: { count: number }) => `Read ${count} files as parts of one sweep.`,
  },
  "return-loss-negative": {
    meaning: "A return loss with negative sign was read as S11 in dB.",
    words: ({ name }: { name: string }) => `${name} is negative, so it was read as S11 in dB.`,
  },
  "s11-positive": {
    meaning: "An S11 in dB with positive sign was read as return loss.",
    words: ({ name }: { name: string | null }) =>
      name === null
        ? "Every reflection lies above 0 dB, which nothing passive sends back: return loss was written without its sign, it seems. Export S11, or the same as a CSV with a column of return loss."
        : `${name} is positive, so it was read as return loss.`,
  },
  "reactance-without-sign": {
    meaning: "The reactance has lost its sign; only the size of the reflection was used.",
    words: ({ name }: { name: string }) =>
      `${name} is nowhere negative, so its sign seems to be missing; only the size of the reflection was used.`,
  },
  "sign-on-trust": {
    meaning: "A reactance above zero throughout falls with frequency: its sign may be lost, and was taken on trust.",
    words: ({ name }: { name: string }) =>
      `${name} lies above zero throughout and falls with frequency, which an antenna's seldom does: its sign may be missing. It was taken as it stands.`,
  },
  "readings-absurd": {
    meaning: "Readings that no antenna has as they were read: the unit or the meaning is another.",
    words: ({
      what,
    }: {
      what: "swr" | "swr-below-1" | "swr-whole" | "ohms" | "ohms-beyond" | "siemens" | "siemens-beyond";
    }) => {
      const why = {
        swr: "Every SWR lies beyond 100: are they hundredths, or of something else?",
        "swr-below-1": "Every SWR lies below 1, which none can: are they of something else?",
        "swr-whole": "Every SWR is a whole number of 11 or more: has their decimal point been lost?",
        siemens: "Nearly every admittance lies beyond 0.2 S, as of 5 Ω: are they thousandths of a siemens?",
        "siemens-beyond":
          "Nearly every admittance lies below 0.00005 S, as of 20,000 Ω: are they siemens, and not thousandths?",
        "ohms-beyond": "Nearly every impedance lies beyond 20,000 Ω: are they ohms, and not thousands of them?",
        ohms: "Nearly every impedance lies below 5 Ω: are they multiples of the reference impedance, or thousands of ohms?",
      }[what];
      return `${why} Believe nothing below before that is settled.`;
    },
  },
  "remark-may-change": {
    meaning: "A remark in the file may say that its numbers are to be changed; they were read as they stand.",
    words: ({ text }: { text: string }) =>
      `A remark may say that the numbers are not what they seem: ${text}. They were read as they stand.`,
  },
  "frequency-slipped": {
    meaning: "A frequency is far from its neighbours: ten times as high, a tenth, or out of their order.",
    words: ({ frequencyHz, expectedHz }: { frequencyHz: number; expectedHz: number }) =>
      `A row at ${frequencyHz / 1e6} MHz stands among rows near ${(expectedHz / 1e6).toPrecision(4)} MHz: a decimal point may have slipped, a digit be wrong, or the unit another.`,
  },
  "reading-slipped": {
    meaning: "A reading is ten times those on either side, or far beyond them: its decimal point may be lost.",
    words: ({
      what,
      value,
      beside,
      frequencyHz,
    }: {
      what: string;
      value: number;
      beside: number;
      frequencyHz: number;
    }) =>
      `The ${what} of ${value} at ${frequencyHz / 1e6} MHz stands between some of ${Number(beside.toPrecision(3))}: its decimal point may be lost.`,
  },
  "band-contradicted": {
    meaning: "A note names a band and a frequency that does not lie in it.",
    words: ({ band, frequencyHz }: { band: string; frequencyHz: number }) =>
      `${frequencyHz / 1e6} MHz stands behind ${band} and is not in that band: one of the two is wrong. The reading was taken for the frequency.`,
  },
  "tables-joined": {
    meaning: "Tables side by side, each with frequencies of its own and no name, were taken for one sweep.",
    words: ({ count }: { count: number }) =>
      `${count} tables stand side by side in ranges of their own, and nothing names them: they were taken for one sweep of one antenna.`,
  },
  "frequency-unlikely": {
    meaning: "All frequencies lie where no wire antenna is swept.",
    words: ({ frequencyHz }: { frequencyHz: number }) => {
      const size =
        frequencyHz >= 1e9 ? `${Number((frequencyHz / 1e9).toPrecision(4))} GHz` : `${frequencyHz / 1e3} kHz`;
      return `The sweep begins at ${size}, where no wire antenna is swept: the unit may be another.`;
    },
  },
  "columns-disagree": {
    meaning: "Columns that should say the same do not.",
    words: ({ used, other, part, difference, reason, agreeAtOhms }: Disagreement) =>
      part === "size"
        ? `${capital(used)} and ${other} do not say the same (ρ differs by ${difference.toFixed(3)}); ${used} was used. ${REASONS[reason](agreeAtOhms ?? Number.NaN)}`
        : `${capital(used)} and ${other} agree in the size of the reflection, but not in its phase (Γ differs by ${difference.toFixed(3)}); ${used} was used. A sign may be missing or turned round, or an angle be of something else.`,
  },
  "name-in-part": {
    meaning: "Of the names of columns a part was understood; the rest says nothing of what they hold.",
    words: ({ names }: { names: readonly string[] }) =>
      `Understood by a part of ${names.length === 1 ? "its name" : "their names"}: ${names.join(", ")}.`,
  },
  "phase-not-understood": {
    meaning:
      "A column may hold the phase of the reflection, or a reactance, and was not understood: the sweep is read without phase.",
    words: ({ name }: { name: string }) =>
      `The column ${name} may hold the phase or a reactance, and is not understood as it is named: the sweep is read without phase.`,
  },
  "series-told-apart": {
    meaning: "A table holds several series, which a column tells apart; each was read as a sweep of its own.",
    words: ({ column, values }: { column: string; values: readonly string[] }) =>
      `By ${/^the (?:notes|header|titles)$/.test(column) ? column : `the column ${column}`} ${values.length} series are told apart (${listed(values)}); each is a sweep of its own.`,
  },
  "frequency-descending": {
    meaning: "The sweep runs from high to low and was turned round.",
    words: () => "The sweep runs downwards; its rows were turned round.",
  },
  "frequency-not-ascending": {
    meaning: "Rows out of order of frequency were sorted.",
    words: () => "Some rows were not in order of frequency and were sorted.",
  },
  "frequency-not-positive": {
    meaning: "Rows at or below 0 Hz were left out.",
    words: ({ count }: { count: number }) => `Left out ${counted(count, "row")} at or below 0 Hz.`,
  },
  "frequency-repeated": {
    meaning: "Rows of the same frequency were averaged, or several readings of one band taken for its range.",
    words: ({ band, count, apart }: { band: string | null; count: number; apart: number | null }) => {
      if (band !== null) return `More than one SWR is noted for ${band}; they are taken for its range.`;
      const far =
        apart === null
          ? ""
          : ` They lie far apart (by ${apart.toFixed(2)} of the reflection): if they are of different antennas, give each a file of its own.`;
      return `${counted(count, "frequency occurs", "frequencies occur")} more than once; those rows were averaged.${far}`;
    },
  },
  "beyond-total-reflection": {
    meaning: "Points with ρ above 1; their SWR counts as infinite.",
    words: ({ count, points, areMost }: { count: number; points: number; areMost: boolean }) =>
      areMost
        ? `${count} of ${points} points reflect more than they receive (ρ > 1), which no antenna does: the numbers mean something else than was read, or the analyser was not calibrated. Believe nothing below.`
        : `${count} of ${points} points reflect more than they receive (ρ > 1): noise, interference or calibration. SWR there counts as infinite.`,
  },
  "single-point": {
    meaning: "A sweep of one point cannot be judged as a curve.",
    words: () => "The sweep has a single point: no band can be judged from it.",
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
