import type { Finding, FindingCode, FindingParams } from "@feedpoint/core";

type Remedies = {
  readonly [Code in FindingCode]?: (params: FindingParams<Code>) => string | null;
};

/** What of this command helps where a finding stands; the finding's own words name none of it. */
const REMEDIES: Remedies = {
  "reference-assumed": () => "Say --reference-ohms if it was another.",
  "reference-mentioned": ({ ohms }) => (ohms === null ? null : `If they do, say --reference-ohms ${ohms}.`),
  "angle-unit-assumed": () => "If they are, say so with --columns (angle:rad).",
  "frequency-unit-inferred": () => "Say --unit if it is another.",
  "reactance-without-sign": () => "Say --signed-reactance if the sign is right.",
  "sign-on-trust": () => "Say --signed-reactance if it is right.",
  "readings-absurd": () => "Say with --columns what the columns hold.",
  "beyond-total-reflection": ({ areMost }) =>
    areMost ? "See the format in the option line, or say with --columns what the columns hold." : null,
  "plan-common": () => "Choose yours with --plan.",
  "class-not-stated": () => "Say which is yours with --class.",
  "reference-not-50": ({ radioOhms, hasPhase }) =>
    hasPhase ? `Say --system-ohms ${radioOhms} to judge for that.` : `Sweep with phase, or against ${radioOhms} Ω.`,
  "feedline-rating-unknown": () => "State ratedVolts and ratedAmperes in the station file.",
  "antenna-end-unsure": () => "feedpoint line measures what yours loses.",
  "advice-at-analyser": () => "Say --feedline and --feedline-length, or --no-feedline if it was taken at the antenna.",
  "advice-power-assumed": () => "Say --power if it is another.",
  "advice-tuner-loss": () => "State tunerLossDb in the station file.",
  "dip-outside-band": () => "feedpoint trim shows what a change of length would do.",
  "loss-not-told": () => "feedpoint line tells the loss of one.",
  "log-not-read": () => "Grade each folder by itself, or write one log with --log.",
};

/** The sentence that goes with a finding where the command shows it; null where nothing of the command helps. */
function remedyFor<Code extends FindingCode>({ code, params }: Finding<Code>): string | null {
  const remedy: ((params: FindingParams<Code>) => string | null) | undefined = REMEDIES[code];
  return remedy?.(params) ?? null;
}

/** A finding in words, with where it stands and what of the command helps. */
export function findingText(finding: Finding): string {
  const { line, message } = finding;
  const remedy = remedyFor(finding);
  return `${line === undefined ? "" : `Line ${line}: `}${message}${remedy === null ? "" : ` ${remedy}`}`;
}
