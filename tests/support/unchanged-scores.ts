/** Sweeps of the same antenna, swept again or hung up again, and what diff makes of their bands. All are invented. */
import { type BandDiff, deploymentOf, diff, planById } from "@feedpoint/core";
import { type FamilyName, makePair, type PairOptions, type SweptPart } from "./strange-pairs/pairs.js";
import { sweepOfPart } from "./strange-scores.js";
import { present } from "./sweeps.js";

const plan = present(planById("itu-r1"), "itu-r1");
/** A band changed by less is to be unchanged: of ρ at its best and worst point, and of the share within the limit. */
const MATTERS = 0.03;
/** Points by which the truth is told, without noise. */
const FINE = 2001;

export interface UnchangedScore {
  readonly family: FamilyName;
  readonly seed: number;
  readonly band: string;
  readonly isUnchanged: boolean;
  readonly isPerhaps: boolean;
}

/** What diff says of each band that did not change by as much as matters, of wide sweeps of some noise and points. */
export function unchangedScores(
  families: readonly FamilyName[],
  seeds: readonly number[],
  change: "nothing" | "another-sweep",
  { points, noise }: { readonly points: number; readonly noise: number },
): readonly UnchangedScore[] {
  return families.flatMap((family) =>
    seeds.flatMap((seed) => {
      const options = { family, change, range: "wide" } as const;
      const truth = new Map(bandsOf(seed, { ...options, points: FINE, noise: 0 }).map((band) => [band.band, band]));
      return bandsOf(seed, { ...options, points, noise })
        .filter(({ band }) => isSame(truth.get(band)))
        .map(({ band, verdict, isPerhaps }) => ({
          family,
          seed,
          band,
          isUnchanged: verdict === "unchanged",
          isPerhaps,
        }));
    }),
  );
}

function bandsOf(seed: number, options: PairOptions): readonly BandDiff[] {
  const { before, after } = makePair(seed, options);
  const joined = (parts: readonly SweptPart[]) => deploymentOf(parts.map(sweepOfPart));
  return diff(joined(before), joined(after), { plan }).bands;
}

function isSame(band: BandDiff | undefined): boolean {
  if (band === undefined) return false;
  const { before, after, change } = band;
  const moved = (["best", "worst"] as const).map((which) =>
    Math.abs((after[which]?.reflectionMagnitude ?? 0) - (before[which]?.reflectionMagnitude ?? 0)),
  );
  return Math.max(...moved, Math.abs(change.withinLimitFraction)) < MATTERS;
}
