import { type FindingKind, megahertz } from "./kind.js";

type Rated = {
  readonly is: number;
  readonly allowed: number;
};

const noLineText = (leastM: number) => `No line is seen, or less than ${100 * leastM} cm of one (electrical)`;

/** What is noticed of the line between analyser and antenna. */
export const LINE_FINDINGS = {
  "feedline-rating-unknown": {
    meaning: "Voltage and current on the line are told, and nothing states what it bears.",
    words: () => "Voltage and current on the line are told, but not what it bears; see its data sheet.",
  },
  "feedline-loss-typical": {
    meaning: "The feedline's loss is that of its kind, not of this line.",
    words: ({ title, lossIs }: { title: string; lossIs: "typical" | "least" }) =>
      lossIs === "typical"
        ? `The loss of ${title} is typical: cables of one kind differ by 20 % and more, and an old or wet one loses more.`
        : `The loss of ${title} is the least that it can be: dry, in air, of pure copper.`,
  },
  "feedline-loss-too-high": {
    meaning: "The sweep contradicts the loss of the feedline as stated.",
    words: ({ lossDb, frequencyHz }: { lossDb: number; frequencyHz: number }) =>
      `The feedline as stated would lose ${lossDb.toFixed(1)} dB at ${megahertz(frequencyHz, 1)} MHz, more than this sweep allows. It is shorter or better than stated, or the sweep was taken elsewhere on it.`,
  },
  "antenna-end-unsure": {
    meaning: "So much comes back through the feedline that its loss decides what is told of the antenna's end.",
    words: ({ bands, lossIs }: { bands: readonly string[]; lossIs: "stated" | "of-its-kind" }) =>
      `On ${bands.join(", ")} what is told of the antenna's end is not sure: ${
        lossIs === "stated"
          ? "with the loss stated for the line the antenna would reflect everything"
          : "with a fifth more loss on the line, as others of its kind have, the antenna would reflect everything"
      }.`,
  },
  "feedline-needs-phase": {
    meaning: "A sweep without phase cannot be followed along a line of another impedance.",
    words: ({ referenceOhms, lineOhms }: { referenceOhms: number; lineOhms: number }) =>
      `Without phase, a sweep against ${referenceOhms} Ω cannot be followed along a line of ${lineOhms} Ω; nothing is said of the antenna's end.`,
  },
  "feedline-overload": {
    meaning: "Voltage or current on the feedline may exceed its rating.",
    words: ({
      band,
      watts,
      volts,
      amperes,
    }: {
      band: string;
      watts: number;
      volts: Rated | null;
      amperes: Rated | null;
    }) => {
      const excess = [
        ...(volts === null ? [] : [`${volts.is.toFixed(0)} V where ${volts.allowed} V are allowed`]),
        ...(amperes === null ? [] : [`${amperes.is.toFixed(1)} A where ${amperes.allowed} A are allowed`]),
      ];
      return `At ${watts.toFixed(0)} W the feedline may see ${excess.join(" and ")} on ${band}.`;
    },
  },
  "no-line-seen": {
    meaning: "A sweep of a line shows none: it seems to be that of its connector.",
    words: ({ leastM }: { leastM: number }) => `${noLineText(leastM)}: there is nothing to compare with a kind.`,
  },
  "far-end-unseen": {
    meaning: "The line loses so much that its far end is not seen up to the end of the sweep.",
    words: ({ aboveHz }: { aboveHz: number }) =>
      `Above ${megahertz(aboveHz, 3)} MHz too little comes back from the far end to be told from what the analyser and the near end add: length and loss are told from below.`,
  },
  "flat-loss": {
    meaning: "Part of what is lost does not grow with frequency, as a poor end or joint has it and a line does not.",
    words: ({ flatDb }: { flatDb: number }) =>
      `${flatDb.toFixed(2)} dB of what is lost is the same at all frequencies, as a poor short, a plug or a joint has it and a line does not. The loss is told without it; sweep the line open as well, and look at its ends.`,
  },
  "line-impedance": {
    meaning: "The line's own impedance is another than it is made for.",
    words: ({
      ohms,
      halfOhms,
      nominalOhms,
      isStated,
    }: {
      ohms: number;
      halfOhms: number;
      nominalOhms: number;
      isStated: boolean;
    }) =>
      `The sweep is that of a line of ${ohms.toFixed(1)} ± ${Math.max(0.1, halfOhms).toFixed(1)} Ω, not of ${nominalOhms} Ω; ${isStated ? "the loss is told for what you state, and may be wrong by tenths of a dB" : "that was reckoned with"}.`,
  },
  "line-impedance-unknown": {
    meaning: "The loss of a line hangs on its own impedance, which the sweep does not tell.",
    words: ({ nominalOhms, hangsDb, spread }: { nominalOhms: number; hangsDb: number; spread: number }) =>
      `The line's own impedance is not told by this sweep: ${(100 * spread).toFixed(0)} % to both sides of ${nominalOhms} Ω are ${hangsDb.toFixed(1)} dB of loss. Sweep it open or shorted.`,
  },
  "length-unlike": {
    meaning: "The stated length of a line is not the one that its phase tells.",
    words: ({
      statedM,
      leastM,
      mostM,
      kind,
    }: {
      statedM: number;
      leastM: number;
      mostM: number;
      kind: string | null;
    }) =>
      `You state ${statedM} m; by its phase the line is ${leastM.toFixed(1)} to ${mostM.toFixed(1)} m long${kind === null ? ", with any usual velocity factor" : ` if it is ${kind}`}. Losses for 100 m are wrong if the length is.`,
  },
  "line-implausible": {
    meaning: "What was measured of a line cannot be: check its length and what was at its far end.",
    words: (
      params:
        | { why: "uneven-loss" | "other-end" | "gain" }
        | { why: "velocity"; velocityFactor: number }
        | { why: "no-line"; leastM: number; statedM: number },
    ) => {
      switch (params.why) {
        case "uneven-loss":
          return "This does not look like a line alone: its loss does not grow evenly with frequency. Was an antenna at the far end?";
        case "other-end":
          return "Carried on to 0 Hz, the phase is not that of the far end as stated. Was it open where you say short, or the other way round? Or a step too coarse hides whole turns.";
        case "gain":
          return "The line seems to have no loss but gain: check the calibration, and what was at the far end.";
        case "no-line":
          return `${noLineText(params.leastM)}, where you state ${params.statedM} m: check what was measured.`;
        case "velocity":
          return `A velocity factor of ${params.velocityFactor.toFixed(2)} is not possible: check the length and what was at the far end.`;
      }
    },
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
