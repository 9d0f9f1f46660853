import { finding } from "../sweep/finding.js";
import { type Sweep, withFindings, withReference } from "../sweep/sweep.js";

/**
 * A sweep as the radio sees it: converted to the impedance that the radio is made for, and said so. A scalar sweep against
 * another one cannot be converted and stays as it is.
 *
 * @param radioOhms Ω
 */
export function forRadio(sweep: Sweep, radioOhms: number): Sweep {
  const { referenceOhms } = sweep;
  if (sweep.kind === "scalar" || referenceOhms === radioOhms) return sweep;
  return withFindings(withReference(sweep, radioOhms), [
    finding("info", "reference-converted", { referenceOhms, radioOhms }),
  ]);
}
