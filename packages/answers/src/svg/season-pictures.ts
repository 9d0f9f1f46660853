import type { BandPlan, Limits, SweepGrade } from "@feedpoint/core";
import { UsageError } from "../asked/usage-error.js";
import { type NamedSweep, seasonCurves } from "./season-curves.js";
import { seasonGrid } from "./season-grid.js";
import { standaloneSvg } from "./standalone.js";

/** Deployments by bands as a picture file. @throws UsageError where no band was swept */
export function seasonGridPicture(sweeps: readonly SweepGrade[], { swr }: Limits, note: string | null): string {
  const grid = seasonGrid(sweeps, swr);
  if (grid === null) throw new UsageError("No band was swept by any of them.");
  return standaloneSvg(grid, `${sweeps.length} deployments, band by band`, note);
}

/** The curves of many on one band as a picture file. */
export const seasonCurvesPicture = (
  sweeps: readonly NamedSweep[],
  band: BandPlan["bands"][number],
  limits: Limits,
  note: string | null,
): string =>
  standaloneSvg(seasonCurves(sweeps, band, limits), `SWR on ${band.band}, ${sweeps.length} deployments`, note);
