/** A measurement that would settle what a deployment leaves open, by its name. */
export type ExperimentCode =
  | "sweep-bands"
  | "with-phase"
  | "line-alone"
  | "at-antenna"
  | "wide-sweep"
  | "repeat"
  | "hold-line";

/** A measurement worth making, and why. */
export interface Experiment {
  readonly code: ExperimentCode;
  /** How many answers it may change: one for each wish and each thing that is asked of it */
  readonly answers: number;
  /** The wishes that they are about, by their titles */
  readonly wishes: readonly string[];
  /** What to do and why, in two sentences */
  readonly message: string;
}

/** What is open about a wish. */
export interface OpenQuestions {
  readonly title: string;
  readonly isKnown: boolean;
  readonly hasPhase: boolean;
  /** Whether it is known what the line loses: stated, or there is none between sweep and antenna */
  readonly isLineKnown: boolean;
  /** Whether the line as it was stated explains more than came back, somewhere */
  readonly isLineDoubtful: boolean;
  /** Whether the sweep goes on far enough to tell of a wire that is a twentieth longer or shorter */
  readonly isSweptBeside: boolean;
  /** Whether putting the same antenna up again may change the answer, as far as that is known */
  readonly mayScatter: boolean;
  /** Whether it is within reach as a whole: then there is less to ask */
  readonly isReached: boolean;
}

/** How many answers about a wish each measurement may change; of equal ones the first is worth doing. */
const ANSWERS: Readonly<Record<ExperimentCode, (open: OpenQuestions) => number>> = {
  // Whether it is within reach, what arrives, what would help.
  "sweep-bands": ({ isKnown }) => (isKnown ? 0 : 3),
  "with-phase": ({ isKnown, hasPhase, isReached }) => (isKnown && !hasPhase ? (isReached ? 1 : 2) : 0),
  "line-alone": ({ isKnown, hasPhase, isLineKnown, isReached }) =>
    isKnown && hasPhase && !isLineKnown ? (isReached ? 1 : 2) : 0,
  "at-antenna": ({ isKnown, isLineDoubtful }) => (isKnown && isLineDoubtful ? 2 : 0),
  "wide-sweep": ({ isKnown, isSweptBeside, isReached }) => (isKnown && !isSweptBeside && !isReached ? 1 : 0),
  repeat: ({ isKnown, mayScatter }) => (isKnown && mayScatter ? 1 : 0),
  "hold-line": ({ isKnown, hasPhase, isLineKnown, isReached }) =>
    isKnown && hasPhase && isLineKnown && !isReached ? 0.5 : 0,
};

const WORDS: Readonly<Record<ExperimentCode, (wishes: string) => string>> = {
  "sweep-bands": (wishes) =>
    `Sweep ${wishes}, a little beyond both edges. Nothing but readings, or nothing at all, is known of it, so no change can be foretold there.`,
  "with-phase": (wishes) =>
    `Sweep ${wishes} with phase (R and X, or the reflection as a complex number) if your analyser can. SWR alone does not tell what a coil, a capacitor, a transformer or another line would do.`,
  "line-alone": (wishes) =>
    `Sweep the line by itself, open at its far end, and state what that shows. It decides what arrives at the antenna and what parts there would do, on ${wishes}.`,
  "at-antenna": (wishes) =>
    `Sweep at the antenna's end of the line. The line as it was stated explains more than came back on ${wishes}, so it is not what was stated.`,
  "wide-sweep": (wishes) =>
    `Sweep ${wishes} a tenth wider on either side. What a longer or shorter wire would bring there is not in the sweep.`,
  repeat: (wishes) =>
    `Take the antenna down, put it up again the same way, and sweep it once more. By how much it then differs decides whether what is told of ${wishes} can be relied on.`,
  "hold-line": (wishes) =>
    `Sweep again with a hand around the line, or with a choke at the antenna. If the sweep changes, the outside of the line is a part of the antenna, and what is foretold for ${wishes} holds for this routing of it only.`,
};

/** The measurement that may change most answers; null where none may change any. */
export function experimentWorthDoing(open: readonly OpenQuestions[]): Experiment | null {
  const counted = (Object.keys(ANSWERS) as ExperimentCode[]).map((code) => {
    const concerned = open.filter((each) => ANSWERS[code](each) > 0);
    const wishes = concerned.map(({ title }) => title);
    const answers = concerned.reduce((sum, each) => sum + ANSWERS[code](each), 0);
    return { code, answers, wishes };
  });
  const best = counted.reduce((a, b) => (b.answers > a.answers ? b : a));
  if (best.answers === 0) return null;
  return { ...best, message: WORDS[best.code](best.wishes.join(", ")) };
}
