import { type BandDiff, type DiffResult, type Finding, placed } from "@feedpoint/core";

/** What was noticed: in the files before and after, then in comparing them. */
export function comparedFindings({ before, after, findings }: DiffResult): readonly Finding[] {
  const about = (side: "before" | "after", infos: DiffResult["before"]) =>
    infos.flatMap((info) => info.findings.map((found) => placed(found, { side })));
  return [...about("before", before), ...about("after", after), ...findings];
}

/** The reasons of the verdicts; bands with the same one share a line. */
export function reasonsOf(bands: readonly BandDiff[]): readonly string[] {
  const reasons = new Map<string, string[]>();
  for (const { band, verdict, why, isHidden } of bands) {
    if (verdict !== "unchanged" || isHidden) reasons.set(why, [...(reasons.get(why) ?? []), band]);
  }
  return [...reasons].map(([why, names]) => `${names.join(", ")}: ${why}`);
}
