import type { FeedlineKind, LineResult, LineVerdict } from "@feedpoint/core";
import { shortCautions } from "./cautions.js";
import { printable } from "./escape.js";
import { findingLines } from "./findings.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { fixed, megahertz } from "./units.js";

const VERDICTS: Readonly<Record<LineVerdict, string>> = {
  "as-expected": "It loses what its kind usually loses: still good.",
  lossy: "It loses more than its kind: old, wet, damaged, a poor connector, or another kind.",
  "low-loss": "It loses less than its kind: another kind, shorter, or not what was at its end.",
  unknown: "Say --kind to have it compared with what such lines lose.",
};

export function lineText(result: LineResult, kind: FeedlineKind | null, width: number): string {
  const { sweep, losses, electricalLengthM } = result;
  const findings = findingLines([...sweep.findings, ...result.findings], width);
  return [
    printable(sweep.label),
    wrap(`  ${lengthText(result)}`, width, "  "),
    wrap(`  ${electricalLengthM === null ? "" : `${endText(result)} `}${verdictText(result, kind)}`, width, "  "),
    "",
    textTable(
      columnsFor(kind),
      losses.map((loss) => [
        megahertz(loss.frequencyHz),
        `${fixed(loss.matchedLossDb, 2)} dB`,
        loss.dbPer100M === null ? "–" : `${fixed(loss.dbPer100M, 2)} dB`,
        loss.expectedDb === null ? "–" : `${fixed(loss.expectedDb, 2)} dB`,
      ]),
      { width },
    ),
    ...(findings === "" ? [] : ["", findings]),
    "",
    shortCautions(width),
  ].join("\n");
}

const verdictText = ({ verdict }: LineResult, kind: FeedlineKind | null): string =>
  verdict === "unknown" && kind !== null ? "No verdict, for the reason below." : VERDICTS[verdict];

function columnsFor(kind: FeedlineKind | null): readonly TableColumn[] {
  return [
    { title: "MHz", align: "right" },
    { title: "Matched loss", align: "right" },
    { title: "per 100 m", align: "right" },
    { title: kind === null ? "of its kind" : `${kind.id} of that length`, align: "right" },
  ];
}

function lengthText({ electricalLengthM, lengthM, velocityFactor, characteristicOhms }: LineResult): string {
  if (electricalLengthM === null) return "Without phase the length cannot be told.";
  const electrical = `Electrical length ${fixed(electricalLengthM, 2)} m (against ${Number(characteristicOhms.toFixed(1))} Ω)`;
  if (lengthM === null || velocityFactor === null) {
    return `${electrical}: ${fixed(electricalLengthM * 0.66, 2)} m of solid-dielectric or ${fixed(electricalLengthM * 0.82, 2)} m of foam coax.`;
  }
  return `${electrical}, ${fixed(lengthM, 2)} m with a velocity factor of ${fixed(velocityFactor, 3)}.`;
}

const endText = ({ endOhms }: LineResult): string =>
  endOhms === null ? "Far end open." : endOhms === 0 ? "Far end shorted." : `Far end on ${endOhms} Ω.`;
