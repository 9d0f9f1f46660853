import type { SweepGrade } from "../grade.js";
import type { HeardComparison } from "../heard/compare.js";
import type { DeploymentLog } from "./deployment-log.js";
import { type LossChange, lossChange } from "./loss-change.js";

/**
 * What the sweeps and the air say together: more loss and a drop confirm each other; more loss and no drop do not, as far as the
 * reports tell; a drop without more loss has another cause, as has a gain.
 */
export type Agreement = "loss-confirmed" | "loss-not-heard" | "worse-without-loss" | "better" | "nothing";

/** A change of SWR and a change on the air, side by side. */
export interface HeardBeside {
  readonly before: string;
  readonly after: string;
  readonly band: string;
  /** Best SWR on the band, of the last sweep of each; null where it was not swept */
  readonly swrBefore: number | null;
  readonly swrAfter: number | null;
  /** How much more is lost on the way; null where the sweeps do not tell */
  readonly loss: LossChange | null;
  readonly heard: Pick<HeardComparison, "verdict" | "differenceDb" | "lowDb" | "highDb" | "receivers">;
  readonly agreement: Agreement;
}

/** Less loss than this explains nothing that is heard, dB at 10 MHz (our own choice). */
const LEAST_LOSS_DB = 0.2;

/**
 * Puts what was heard of two deployments beside their sweeps, by the names that the log gives both.
 *
 * @param comparisons of reports joined by the same log
 */
export function heardBeside(
  sweeps: readonly SweepGrade[],
  comparisons: readonly HeardComparison[],
  { fileColumn }: Pick<DeploymentLog, "fileColumn">,
): readonly HeardBeside[] {
  const nameOf = ({ log }: SweepGrade) =>
    Object.entries(log ?? {}).find(([column]) => column.toLowerCase() === "deployment")?.[1] ||
    (log?.[fileColumn] ?? "");
  const sweepOf = (name: string) => sweeps.findLast((sweep) => nameOf(sweep) === name);
  return comparisons.flatMap(({ before, after, band, ...heard }) => {
    const [first, second] = [sweepOf(before), sweepOf(after)];
    if (first === undefined || second === undefined) return [];
    const swrOf = (sweep: SweepGrade) => sweep.bands.find((each) => each.band === band)?.bestSwr ?? null;
    const loss = lossChange(first, second);
    const { verdict, differenceDb, lowDb, highDb, receivers } = heard;
    return [
      {
        before,
        after,
        band,
        swrBefore: swrOf(first),
        swrAfter: swrOf(second),
        loss,
        heard: { verdict, differenceDb, lowDb, highDb, receivers },
        agreement: agreementOf(loss, verdict),
      },
    ];
  });
}

function agreementOf(loss: LossChange | null, verdict: HeardComparison["verdict"]): Agreement {
  const isLossy = loss !== null && loss.at10MHzDb - loss.marginDb > LEAST_LOSS_DB;
  if (isLossy) return verdict === "worse" ? "loss-confirmed" : "loss-not-heard";
  if (verdict === "cannot-tell") return "nothing";
  return verdict === "worse" ? "worse-without-loss" : "better";
}
