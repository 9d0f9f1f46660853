import { type FindingKind, listed, megahertz } from "./kind.js";

type Names = {
  readonly names: readonly string[];
};

/** What a change of line makes of a difference. */
type LinesTakenOut = {
  /** "12 m, RG-58" */
  readonly before: string;
  readonly after: string;
  /** What seems left of a change of the line; null where nothing is */
  readonly left: {
    readonly lengthM: number;
    readonly lossDb: number;
    /** For what reason it was taken out too; null: it was not */
    readonly takenOutAs: "within-doubt" | "asked-for" | null;
  } | null;
  /** Root mean square of the difference of Γ */
  readonly atAnalyser: number;
  readonly atAntennas: number;
  /** null where there is no difference to explain */
  readonly explains: "all" | "part" | "none" | null;
};

const EXPLAINED_BY_LINES = {
  all: "the change of the line explains it",
  part: "the change of the line explains a part of it, and the antenna changed as well",
  none: "the change of the line does not explain it",
} as const;

const NOT_FORETOLD = {
  "not-swept": "it was not swept",
  "only-readings": "only readings are known of it",
  "no-phase": "its sweep has no phase, unlike the others",
} as const;

const LEFT_OF_LINES = {
  "within-doubt": ", within what such lengths and kinds are known to, and was taken out too.",
  "asked-for": ", more than such lengths and kinds are known to, and was taken out too, as was asked for.",
} as const;

function lineLeft({ lengthM, lossDb, takenOutAs }: NonNullable<LinesTakenOut["left"]>): string {
  const what = `${Math.abs(lengthM).toFixed(1)} m (electrical) ${lengthM < 0 ? "less" : "more"} line and ${Math.abs(lossDb).toFixed(2)} dB at 10 MHz ${lossDb < 0 ? "less" : "more"}`;
  const fate = takenOutAs === null ? ": see whether both lines are what you stated." : LEFT_OF_LINES[takenOutAs];
  return `What is left looks like ${what}${fate}`;
}

/** What trim, try and diff notice. */
export const JOB_FINDINGS = {
  "no-dip": {
    meaning: "There is no dip near the wanted frequency.",
    words: ({ wantedHz, loneHz, leastSwr }: { wantedHz: number; loneHz: number | null; leastSwr: number }) =>
      loneHz === null
        ? `The sweep has no dip below ${leastSwr}:1 within 20 % of ${megahertz(wantedHz, 3)} MHz that stands out of its noise.`
        : `The lowest reading near ${megahertz(wantedHz, 3)} MHz, at ${megahertz(loneHz, 3)} MHz, stands alone: a dip narrower than the step, or interference. Sweep there in finer steps before the wire is cut.`,
  },
  "prediction-rough": {
    meaning: "What a change of length would do is foretold without the feedline taken out.",
    words: ({ why }: { why: "no-phase" | "no-feedline" }) =>
      why === "no-phase"
        ? "Without phase the feedline cannot be taken out of the sweep, so the prediction is rough."
        : "No feedline was stated. If there was one, the prediction is rough: it stretches what the line does along with the antenna.",
  },
  "wish-not-foretold": {
    meaning: "Of something that is wanted too little is known for a change to be foretold.",
    words: ({ reason, wishes }: { reason: keyof typeof NOT_FORETOLD; wishes: readonly string[] }) =>
      `Nothing can be foretold of ${listed(wishes)}: ${NOT_FORETOLD[reason]}.`,
  },
  "advice-without-phase": {
    meaning:
      "Without phase only a change of the wire, or a line of the same impedance that loses less, can be foretold.",
    words: () =>
      "The sweep has no phase: what a coil, a capacitor, a transformer, a stub or another line would do does not follow from the SWR. Only a change of the wire, or a line of the same impedance that loses less, is told.",
  },
  "advice-at-analyser": {
    meaning: "No line is known, so what is told holds where the sweep was taken.",
    words: () =>
      "No feedline was stated. What is told holds where the sweep was taken; what arrives counts the loss of added parts only, and a change of the wire is rough if there was a line in between.",
  },
  "fixed-parts-not-told": {
    meaning: "What stays as it is when the wire is cut was not said, and the dip follows by as much as that leaves.",
    words: () =>
      "What stays as it is when the wire is cut was not said. Over radials or a counterpoise that are not cut along, the dip follows by less than is told.",
  },
  "fixed-lengths-not-told": {
    meaning: "Of a wire over radials or a counterpoise not all lengths were said, so what a cut does is told widely.",
    words: ({ what, missing }: { what: string; missing: readonly ("wire" | "count" | "length")[] }) => {
      const said = {
        wire: "how long the wire is",
        count: `how many ${what} there are`,
        length: `how long the ${what} ${what === "radials" ? "are" : "is"}`,
      };
      return `Not said: ${listed(missing.map((each) => said[each]))}. What a change of the wire does is told more widely for it.`;
    },
  },
  "advice-power-assumed": {
    meaning: "No power was stated, so what parts bear is told for a usual one.",
    words: ({ powerW }: { powerW: number }) => `What parts bear is told at ${powerW} W, for no power was stated.`,
  },
  "advice-too-hot": {
    meaning: "What would have been as good was left out, because a part of it would get too hot at the power.",
    words: ({ count, powerW }: { count: number; powerW: number }) =>
      `${count === 1 ? "One idea was" : `${count} ideas were`} left out: at ${powerW} W a part would turn more into heat than such parts bear (a coil 20 W, a capacitor 5 W, a line 5 W in each metre).`,
  },
  "advice-tuner-loss": {
    meaning: "What the tuner loses was not stated and is not counted.",
    words: () =>
      "What your tuner loses was not stated and is not counted; far from a match it may be a fifth of the power.",
  },
  "no-overlap": {
    meaning: "The two sweeps have no frequency in common.",
    words: () => "No band was swept both before and after, so nothing can be compared.",
  },
  "same-plane": {
    meaning: "A change of the line was taken out of the second sweep before the antennas were compared.",
    words: ({ cause }: { cause: string }) => `Taken out of the second sweep before comparing: ${cause}`,
  },
  "lines-taken-out": {
    meaning:
      "The lines that both sides were swept through were taken out, and the antennas are compared at their ends.",
    words: ({ before, after, left, atAnalyser, atAntennas, explains }: LinesTakenOut) =>
      [
        `Both lines are taken out (before: ${before}; after: ${after}), and each SWR here is the one at the antenna.`,
        ...(explains === null
          ? []
          : [
              `At the analyser Γ differs by ${atAnalyser.toFixed(2)}, at the antennas by ${atAntennas.toFixed(2)}: ${EXPLAINED_BY_LINES[explains]}.`,
            ]),
        ...(left === null ? [] : [lineLeft(left)]),
      ].join(" "),
  },
  "lines-need-phase": {
    meaning: "Lines were stated, and a sweep without phase does not let them be taken out.",
    words: () => "The lines stated were not taken out: that needs the phase, which not all of these sweeps know.",
  },
  "same-sweep": {
    meaning: "A sweep stands on both sides of the comparison.",
    words: ({ labels }: { labels: readonly string[] }) =>
      `On both sides, and so no difference in itself: ${labels.join(", ")}.`,
  },
  "loss-not-told": {
    meaning:
      "A lower SWR may be no more than loss, in the line or in a joint, a ground or a core; nothing in the sweeps rules it out.",
    words: ({ bands }: { bands: readonly string[] }) =>
      `Better on ${bands.join(", ")}, or only more loss (a wet line, a poor joint, ground or core): that lowers the SWR as well, and these sweeps do not rule it out. Measure the line alone, and sweep far from the bands as well if these do not.`,
  },
  "repeats-differ": {
    meaning: "The sweeps of one side differ among themselves by more than counts as a change.",
    words: ({ sweeps, which, scatter }: { sweeps: number; which: "before" | "after"; scatter: number }) =>
      `The ${sweeps} sweeps ${which} differ among themselves by ${scatter.toFixed(2)} of the reflection, more than counts as a change: are they of one deployment, taken at one place? Such scatter hides what you look for.`,
  },
  "causes-alike": {
    meaning: "Several causes look alike over the range that was swept.",
    words: ({ names }: Names) =>
      `Either ${names.join(", or ")}: over what was swept they look alike. A sweep over a wider range tells them apart.`,
  },
  "scatter-assumed": {
    meaning:
      "A change may be no more than what putting the same antenna up again does, of which no repeats tell the size.",
    words: ({ bands, scatter }: { bands: readonly string[]; scatter: number }) =>
      `One sweep a side: the same antenna, put up and swept again, is assumed to differ by ${scatter} in Γ. On ${bands.join(", ")} no more than that may have changed. One more sweep of each side, taken anew, settles it.`,
  },
  "band-not-compared": {
    meaning: "Bands asked for that not all of the sweeps cover.",
    words: ({ bands }: { bands: readonly string[] }) =>
      `Not compared, for not all of the sweeps cover it, or nothing may be sent there: ${bands.join(", ")}.`,
  },
  "scalar-comparison": {
    meaning: "A sweep without phase was compared; causes cannot be told apart.",
    words: () =>
      "One of the sweeps knows only the size of the reflection: a moved resonance can be told, and loss where the sweeps reach far from the antenna's bands; another length of line or another reference cannot.",
  },
  "different-reference": {
    meaning: "The two sweeps have different reference impedances; both were compared at the first one's.",
    words: ({
      firstOhms,
      otherOhms,
      areMatched,
    }: {
      firstOhms: number;
      otherOhms: readonly number[];
      areMatched: boolean;
    }) => {
      const others = otherOhms.map((ohms) => `${ohms} Ω`).join(", ");
      return areMatched
        ? `Sweeps that refer to ${others} were converted to the first one's ${firstOhms} Ω.`
        : `The first sweep refers to ${firstOhms} Ω, others to ${others}; without phase they cannot be compared.`;
    },
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
