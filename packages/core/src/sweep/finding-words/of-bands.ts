import { counted, type FindingKind, kilohertz, megahertz, swrText } from "./kind.js";

/** Who may not transmit, and in what. */
type Closed = {
  readonly bands: readonly string[];
  /** null: no class was stated */
  readonly licenceClass: string | null;
  /** Names of the modes asked for; empty: any */
  readonly modes: readonly string[];
};

/** Says that nothing of what was asked for may be sent on some bands. */
export function closedText({ bands, licenceClass, modes }: Closed): string {
  const who = licenceClass === null ? "The plan gives nothing" : `Class ${licenceClass} has no privileges`;
  const forWhat = modes.length === 0 ? "" : ` for ${modes.join(", ")}`;
  return `${who}${forWhat} on ${bands.join(", ")}.`;
}

const MOST_NAMED = 3;

/** The readings at some frequencies, of which the first few are named. */
function namedReadings(frequenciesHz: readonly number[]): string {
  const named = frequenciesHz.slice(0, MOST_NAMED).map((frequency) => megahertz(frequency, 3));
  const more = frequenciesHz.length > MOST_NAMED ? ` and ${frequenciesHz.length - MOST_NAMED} more` : "";
  return `The reading${frequenciesHz.length > 1 ? "s" : ""} at ${named.join(", ")} MHz${more}`;
}

const third = (frequenciesHz: readonly number[]) => (frequenciesHz.length > 1 ? "" : "s");

type LossBound = {
  readonly lossDb: number;
  readonly frequencyHz: number;
};

const boundText = ({ lossDb, frequencyHz }: LossBound) =>
  `Between analyser and antenna at most ${lossDb.toFixed(1)} dB is lost one way near ${megahertz(frequencyHz, 1)} MHz (half of the return loss there; more at higher frequencies).`;

/** What is noticed when bands are held against a plan. */
export const BAND_FINDINGS = {
  "parts-differ": {
    meaning: "Parts of one deployment differ where they overlap, by more than counts as a change.",
    words: ({
      labels,
      lowHz,
      highHz,
      distance,
    }: {
      labels: readonly string[];
      lowHz: number;
      highHz: number;
      distance: number;
    }) =>
      `${labels.join(" and ")} differ by ${distance.toFixed(3)} in the reflection over ${megahertz(lowHz, 3)}-${megahertz(highHz, 3)} MHz: something was moved or touched between them, wind, current on the outside of the coax, or another calibration. What is told of the antenna is no surer than that.`,
  },
  "spot-outside-bands": {
    meaning: "Single readings lie in no amateur band, as after a slip of the decimal point.",
    words: ({ frequenciesHz }: { frequenciesHz: readonly number[] }) =>
      `${namedReadings(frequenciesHz)} lie${third(frequenciesHz)} in no band of the plan; see whether a decimal point slipped.`,
  },
  "bands-closed": {
    meaning: "Bands on which the licence class, or the modes named, may send nothing; they were left out.",
    words: closedText,
  },
  "band-not-permitted": {
    meaning: "The licence class has no privileges on a band that was asked for.",
    words: closedText,
  },
  "verdict-unsure": {
    meaning: "The limit lies within what the worst SWR of a band may be, so that its verdict may be the other.",
    words: (params: {
      band: string;
      which: "best" | "worst";
      swrLow: number;
      swrHigh: number;
      verdict: string;
      limitSwr: number;
    }) =>
      `On ${params.band} the ${params.which} SWR may be ${swrText(params.swrLow)} to ${swrText(params.swrHigh)}, so that "${params.verdict}" at ${params.limitSwr}:1 is not sure.`,
  },
  "mode-not-permitted": {
    meaning: "A mode that was named may not be sent on a band, while others may.",
    words: ({ mode, bands }: { mode: string; bands: readonly string[] }) =>
      `${mode} may not be sent on ${bands.join(", ")}; what is told there is for the other modes.`,
  },
  "power-limit-unknown": {
    meaning: "The plan does not say what power the licence allows; what is told is what the equipment gives.",
    words: ({ bands }: { bands: readonly string[] }) =>
      `The plan does not say what power your licence allows on ${bands.join(", ")}; what is told there is what the equipment gives.`,
  },
  "no-rating-stated": {
    meaning: "Only the licence limits the power that is told: no rating of radio or antenna was stated.",
    words: ({ bands }: { bands: readonly string[] }) =>
      `No rating of radio, antenna or line was stated: the power told on ${bands.join(", ")} is the most that the licence allows, not what they bear.`,
  },
  "rating-not-covered": {
    meaning: "The SWR goes beyond the one up to which the maker's rating of the antenna holds.",
    words: ({ bands, upToSwr }: { bands: readonly string[]; upToSwr: number }) =>
      `The maker's rating of the antenna holds up to an SWR of ${swrText(upToSwr)}; within reach it is higher on ${bands.join(", ")}, and the rating does not cover that. Use less power there, or ask the maker.`,
  },
  "wire-length-unknown": {
    meaning: "The length of the wire was not stated: how far people must stay away is told for a short one.",
    words: () =>
      "How far people must stay away is told for a wire of a tenth of a wave: a longer one asks for less, a shorter one for more. State the length of yours.",
  },
  "people-too-near": {
    meaning: "Where people are said to be, a rule of exposure is not kept.",
    words: ({ distanceM, where }: { distanceM: number; where: readonly string[] }) =>
      `With people at ${Number(distanceM.toFixed(2))} m not every rule of exposure is kept: ${where.join(", ")}. The table of people says which, and with what power they would be; until then do not transmit with that.`,
  },
  "plan-power-weak": {
    meaning: "The power that the plan states for the licence class rests on one secondary page.",
    words: ({ bands }: { bands: readonly string[] }) =>
      `What the plan says of your licence's power on ${bands.join(", ")} rests on one secondary page; compare it with the licence.`,
  },
  "plan-somewhere-less": {
    meaning: "In some places less power is allowed than the plan's table says, or none.",
    words: ({ band, what }: { band: string; what: string }) => `On ${band}: ${what}`,
  },
  "plan-voluntary": {
    meaning: "The band plan is agreed among amateurs and is no law.",
    words: () =>
      "This band plan is agreed among amateurs and is no law: what it does not plan for may be permitted, and what it does not forbid need not be.",
  },
  "plan-common": {
    meaning: "No band plan was chosen: what all three ITU Regions have in common was used.",
    words: () => "No band plan was chosen, so only what all three ITU Regions have in common was judged.",
  },
  "plan-from-memory": {
    meaning: "The band plan, or part of it, rests on memory and not on a source.",
    words: ({ extent, bands }: { extent: "all" | "most" | "band"; bands: readonly string[] }) => {
      if (extent === "all") return "The whole of this plan rests on memory; nothing of it was read from a source.";
      if (extent === "band") return `The plan's ${bands.join(", ")} edges could not all be confirmed from a source.`;
      const exception = bands.length === 0 ? "no band of it" : `only ${bands.join(", ")}`;
      return `Most of this plan rests on memory; read whole from a source: ${exception}.`;
    },
  },
  "class-not-stated": {
    meaning: "No licence class was stated: the whole of each band was judged.",
    words: ({ classes }: { classes: readonly string[] }) =>
      `Judged for every licence class together (${classes.join(", ")}).`,
  },
  "reference-not-50": {
    meaning: "The sweep refers to another impedance than the 50 Ω of most radios.",
    words: ({ referenceOhms, radioOhms, hasPhase }: { referenceOhms: number; radioOhms: number; hasPhase: boolean }) =>
      `SWR here is against ${referenceOhms} Ω; a radio made for ${radioOhms} Ω sees another SWR${hasPhase ? "" : ", which cannot be told without phase"}.`,
  },
  "reference-converted": {
    meaning: "The sweep refers to another impedance than the radio; it was judged for the radio's.",
    words: ({ referenceOhms, radioOhms }: { referenceOhms: number; radioOhms: number }) =>
      `The sweep refers to ${referenceOhms} Ω; it was judged for the ${radioOhms} Ω that the radio is made for.`,
  },
  "narrower-unseen": {
    meaning: "The sweep's step could hide a dip as narrow as that of a small loop.",
    words: ({ bands, widthHz }: { bands: readonly string[]; widthHz: number }) =>
      `In steps as here no dip narrower than ${(widthHz / 1000).toFixed(0)} kHz is sure to show on ${bands.join(", ")} (a small loop's is narrower).`,
  },
  "step-too-coarse": {
    meaning: "The sweep's step is too coarse for a band, or for the length of a line.",
    words: (
      params:
        | { of: "band"; band: string; why: "turns" | "could-hide"; stepHz: number }
        | { of: "line"; stepHz: number; alikeM: number },
    ) => {
      if (params.of === "line")
        return `In steps of ${kilohertz(params.stepHz)} the phase turns too far for the length to be sure: a line longer by ${params.alikeM.toFixed(0)} m (electrical) would look the same. Sweep in finer steps.`;
      const why =
        params.why === "turns"
          ? "the reflection changes much from one sample to the next"
          : "a narrow dip or peak could hide between two samples";
      return `On ${params.band} ${why}; a step of ${params.stepHz / 1000} kHz would tell more.`;
    },
  },
  spike: {
    meaning: "A sample stands alone, as interference or a bad contact makes it; it was left out of the curve.",
    words: ({ frequenciesHz, are }: { frequenciesHz: readonly number[]; are: "peaks" | "dips" }) => {
      const why = are === "dips" ? "a dip narrower than the step" : "a contact that opened";
      return `${namedReadings(frequenciesHz)} stand${third(frequenciesHz)} alone (interference, or ${why}) and did not count; sweep again there.`;
    },
  },
  "dip-on-few-samples": {
    meaning: "A dip rests on fewer than three samples, of those within the limit or of all that its resonance shows.",
    words: ({ band, samples, stepHz }: { band: string; samples: number; stepHz: number }) =>
      `The dip on ${band} rests on ${counted(samples, "sample")}; a step of ${stepHz / 1000} kHz would tell more.`,
  },
  "bandwidth-not-from-q": {
    meaning: "The bandwidth is not what a single resonance of the impedance's Q would have.",
    words: (params: { band: string; limitSwr: number; widthHz: number; q: number; expectedHz: number }) =>
      `On ${params.band} the ${params.limitSwr}:1 bandwidth is ${kilohertz(params.widthHz)}; one resonance of Q ${params.q.toFixed(1)}, as the impedance has it here, would give ${kilohertz(params.expectedHz)}. More than one resonance, or a feedline between, does that.`,
  },
  "loss-bound": {
    meaning: "The sweep bounds the loss of the feedline from above.",
    words: boundText,
  },
  "low-swr-may-be-loss": {
    meaning: "A low SWR over a wide range may be loss and not radiation.",
    words: ({ greatestSwr, ...bound }: LossBound & { greatestSwr: number }) =>
      `Nowhere in this sweep is the SWR above ${greatestSwr.toFixed(1)}: that may be loss (a long, old or wet feedline, a poor joint), not a good antenna. ${boundText(bound)}`,
  },
  "dip-outside-band": {
    meaning: "The dip lies beside the band: the wire is too long or too short for it.",
    words: ({ dips }: { dips: readonly { band: string; frequencyHz: number; change: number }[] }) =>
      `Dips beside the band: ${dips
        .map(
          ({ band, frequencyHz, change }) =>
            `${band} at ${megahertz(frequencyHz, 3)} MHz (wire ${Math.abs(change * 100).toFixed(1)} % too ${change < 0 ? "long" : "short"})`,
        )
        .join(", ")}, held against the middle of each.`,
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
