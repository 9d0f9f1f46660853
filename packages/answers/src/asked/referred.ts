import { forRadio, type ReadOptions, type Sweep, withReference } from "@feedpoint/core";
import { UsageError } from "./usage-error.js";

/** How files are read, and for what impedance their sweeps are meant. */
export interface ReadingSettings {
  readonly reading: ReadOptions;
  /** SWR is judged against this impedance, Ω; null: against each file's own, or the radio's */
  readonly systemOhms?: number | null;
  /** That of the radio, where the station says what the radio is; Ω */
  readonly radioOhms?: number | null;
}

/**
 * A sweep as it is to be seen: against the impedance asked for, else against the radio's where it was stated.
 *
 * @throws UsageError for a sweep without phase against another impedance than the one asked for
 */
export function referred(sweep: Sweep, { systemOhms = null, radioOhms = null }: ReadingSettings): Sweep {
  if (systemOhms === null) return radioOhms === null ? sweep : forRadio(sweep, radioOhms);
  if (sweep.referenceOhms === systemOhms) return sweep;
  if (sweep.kind === "vector") return withReference(sweep, systemOhms);
  throw new UsageError(
    `${sweep.source.file}: without phase, a sweep against ${sweep.referenceOhms} Ω cannot be judged against ${systemOhms} Ω.`,
  );
}
