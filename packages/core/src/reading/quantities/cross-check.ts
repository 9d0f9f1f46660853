import { type Finding, finding } from "../../sweep/finding.js";
import type { FindingParams } from "../../sweep/finding-words/words.js";
import { determinationsOf } from "./assemble.js";
import type { Determination, NumberColumn } from "./determination.js";
import { medianDisagreement, medianDistance } from "./disagreement.js";
import type { Printed } from "./resolution.js";

/** Reference impedances in common use, tried where columns disagree; Ω. */
const OTHER_REFERENCES = [25, 50, 75, 100, 150, 200, 300, 450, 600];
/** Differences up to this many times what the printed digits explain are no disagreement. */
const MARGIN = 4;
/** Nor is a difference in ρ below this: SWR columns are often cut, not rounded. */
const LEAST_DISAGREEMENT = 0.005;

/**
 * Compares the reflection that was used with every other way in which the same columns give one.
 *
 * @returns a finding for each that differs by more than its printed digits explain, with the likely reason
 */
export function crossCheck(
  chosen: Printed,
  all: readonly Printed[],
  columns: readonly NumberColumn[],
  referenceOhms: number,
): readonly Finding[] {
  const findings: Finding[] = [];
  for (const other of all) {
    if (other === chosen || other.columns.every((column) => chosen.columns.includes(column))) continue;
    const tolerance = Math.max(LEAST_DISAGREEMENT, MARGIN * (chosen.resolution() + other.resolution()));
    const difference = medianDisagreement(chosen, other);
    if (!(difference > tolerance)) {
      const distance = chosen.isVector && other.isVector ? medianDistance(chosen, other) : 0;
      if (distance > tolerance) findings.push(otherPhase(chosen, other, distance));
      continue;
    }
    findings.push(
      finding("problem", "columns-disagree", {
        used: chosen.title,
        other: other.title,
        part: "size",
        difference,
        ...likelyReason(chosen, other, columns, referenceOhms, tolerance),
      }),
    );
  }
  return findings;
}

const otherPhase = (chosen: Determination, other: Determination, distance: number): Finding =>
  finding("problem", "columns-disagree", {
    used: chosen.title,
    other: other.title,
    part: "phase",
    difference: distance,
    reason: "unknown",
    agreeAtOhms: null,
  });

type Reason = Pick<FindingParams<"columns-disagree">, "reason" | "agreeAtOhms">;

function likelyReason(
  chosen: Determination,
  other: Determination,
  columns: readonly NumberColumn[],
  referenceOhms: number,
  tolerance: number,
): Reason {
  for (const ohms of OTHER_REFERENCES) {
    if (ohms === referenceOhms) continue;
    const again = determinationsOf(columns, ohms);
    const sameChosen = again.find(({ title }) => title === chosen.title);
    const sameOther = again.find(({ title }) => title === other.title);
    if (sameChosen === undefined || sameOther === undefined) continue;
    if (medianDisagreement(sameChosen, sameOther) <= tolerance) return { reason: "reference", agreeAtOhms: ohms };
  }
  const swapped = columns.map((column): NumberColumn => {
    if (column.quantity === "resistance") return { ...column, quantity: "reactance" };
    return column.quantity === "reactance" ? { ...column, quantity: "resistance" } : column;
  });
  const exchanged = determinationsOf(swapped, referenceOhms).find(({ title }) => title === chosen.title);
  if (exchanged !== undefined && chosen.title === "R and X" && medianDisagreement(exchanged, other) <= tolerance) {
    return { reason: "swapped", agreeAtOhms: null };
  }
  return { reason: "unknown", agreeAtOhms: null };
}
