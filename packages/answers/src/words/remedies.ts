import type { Finding, FindingCode, FindingParams } from "@feedpoint/core";

type Remedies = {
  readonly [Code in FindingCode]?: (params: FindingParams<Code>) => string | null;
};

/** Who speaks: the command names its options, the page its fields; what the page saves has none to name. */
export type Voice = "command" | "page" | "saved";

const OF_COMMAND: Remedies = {
  "reference-assumed": () => "Say --reference-ohms if it was another.",
  "reference-mentioned": ({ ohms }) => (ohms === null ? null : `If they do, say --reference-ohms ${ohms}.`),
  "angle-unit-assumed": () => "If they are, say so with --columns (angle:rad).",
  "frequency-unit-inferred": () => "Say --unit if it is another.",
  "reactance-without-sign": () => "Say --signed-reactance if the sign is right.",
  "sign-on-trust": () => "Say --signed-reactance if it is right.",
  "readings-absurd": () => "Say with --columns what the columns hold.",
  "beyond-total-reflection": ({ areMost }) =>
    areMost ? "See the format in the option line, or say with --columns what the columns hold." : null,
  "phase-not-understood": () => "Say with --columns what the columns hold, such as angle or angle:rad.",
  "plan-common": () => "Choose yours with --plan.",
  "class-not-stated": () => "Say which is yours with --class.",
  "reference-not-50": ({ radioOhms, hasPhase }) =>
    hasPhase ? `Say --system-ohms ${radioOhms} to judge for that.` : `Sweep with phase, or against ${radioOhms} Ω.`,
  "feedline-rating-unknown": () => "State ratedVolts and ratedAmperes in the station file.",
  "antenna-end-unsure": () => "feedpoint line measures what yours loses.",
  "advice-at-analyser": () => "Say --feedline and --feedline-length, or --no-feedline if it was taken at the antenna.",
  "advice-power-assumed": () => "Say --power if it is another.",
  "advice-tuner-loss": () => "State tunerLossDb in the station file.",
  "fixed-parts-not-told": () => "Say --fixed nothing, radials or counterpoise.",
  "fixed-lengths-not-told": ({ what, missing }) => {
    const fixed = `--fixed ${what}:${what === "radials" ? "4x5.1" : "3"}`;
    const isWireAlone = missing.length === 1 && missing[0] === "wire";
    return `Say ${[...(isWireAlone ? [] : [fixed]), ...(missing.includes("wire") ? ["--wire-length"] : [])].join(" and ")}, in m.`;
  },
  "dip-outside-band": () => "feedpoint trim shows what a change of length would do.",
  "loss-not-told": () => "feedpoint line tells the loss of one.",
  "log-not-read": () => "Grade each folder by itself, or write one log with --log.",
};

const OF_PAGE: Remedies = {
  "reference-assumed": () => "If it was another, say so below How it was read.",
  "reference-mentioned": () => "If they do, say so below How it was read.",
  "angle-unit-assumed": () => "If they are, say so with the columns below How it was read.",
  "frequency-unit-inferred": () => "If it is another, say so below How it was read.",
  "reactance-without-sign": () => "If the sign is right, say so below How it was read.",
  "sign-on-trust": () => "If it is right, say so below How it was read.",
  "readings-absurd": () => "Say below How it was read what the columns hold.",
  "beyond-total-reflection": ({ areMost }) =>
    areMost ? "See the format in the option line, or say below How it was read what the columns hold." : null,
  "phase-not-understood": () => "Say below How it was read what the columns hold.",
  "plan-common": () => "Choose yours above.",
  "class-not-stated": () => "Choose yours above.",
  "reference-not-50": ({ radioOhms, hasPhase }) =>
    hasPhase
      ? `State the radio's ${radioOhms} Ω in Your station to judge for that.`
      : `Sweep with phase, or against ${radioOhms} Ω.`,
  "feedline-rating-unknown": () => "State what its maker allows in Your station.",
  "antenna-end-unsure": () => "A sweep of the line alone would tell what yours loses.",
  "advice-at-analyser": () => "State your feedline in Your station.",
  "advice-power-assumed": () => "State yours in Your station if it is another.",
  "advice-tuner-loss": () => "State what your tuner loses in Your station.",
  "fixed-parts-not-told": () => "Say under Antenna, in Your station, what stays.",
  "fixed-lengths-not-told": () => "Say it under Antenna, in Your station.",
};

const REMEDIES: Readonly<Record<Voice, Remedies>> = { command: OF_COMMAND, page: OF_PAGE, saved: {} };

/** What of the command or the page helps beside a table. */
export const HINTS = {
  command: {
    eachRule: "--people 3m tells each rule",
    whatIsPermitted: "Say --modes to be told what is permitted there, and judged over all that a signal occupies.",
    powerOfRadio: "Say --power for the radio's.",
    lineAlone: "sweep the line alone (feedpoint line)",
  },
  page: {
    eachRule: "state in Your station how near people are, and each rule is told",
    whatIsPermitted:
      "Name your modes in Your station to be told what is permitted there, and judged over all that a signal occupies.",
    powerOfRadio: "State the radio's in Your station.",
    lineAlone: "sweep the line alone",
  },
  saved: {
    eachRule: "each rule is told where the distance of people is stated",
    whatIsPermitted: "Without modes it is not told what is permitted there.",
    powerOfRadio: "The radio's was not stated.",
    lineAlone: "sweep the line alone",
  },
} as const satisfies Readonly<Record<Voice, Readonly<Record<string, string>>>>;

/** The sentence that goes with a finding; null where nothing of the command, or the page, helps. */
function remedyFor<Code extends FindingCode>({ code, params }: Finding<Code>, voice: Voice): string | null {
  const remedy: ((params: FindingParams<Code>) => string | null) | undefined = REMEDIES[voice][code];
  return remedy?.(params) ?? null;
}

/** A finding in words, with where it stands and what helps. */
export function findingText(finding: Finding, voice: Voice = "command"): string {
  const { line, message } = finding;
  const remedy = remedyFor(finding, voice);
  return `${line === undefined ? "" : `Line ${line}: `}${message}${remedy === null ? "" : ` ${remedy}`}`;
}
