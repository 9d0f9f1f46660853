import type { SweepGrade } from "@feedpoint/core";

type Info = SweepGrade["sweep"];

/** What to call each sweep in a table: by its label where no other has the same, else with its folders. */
export function sweepNames(sweeps: readonly SweepGrade[]): (sweep: Info) => string {
  const counts = new Map<string, number>();
  for (const { sweep } of sweeps) counts.set(sweep.label, (counts.get(sweep.label) ?? 0) + 1);
  return ({ label, file }) => ((counts.get(label) ?? 0) < 2 ? label : folderIn(file) + label);
}

const folderIn = (file: string) => /^.*[/\\]/s.exec(file)?.[0] ?? "";
