import { quote } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { CutRows, Remarked } from "./table-builder.js";
import type { TableColumn } from "./table-column.js";

/** What there is to say of how the table was read. */
export function findingsOfTable(
  { leftOut, nextBlockLine, remarked }: CutRows,
  columns: readonly TableColumn[],
  flagged: readonly Remarked[],
): readonly Finding[] {
  const findings: Finding[] = [];
  const mark = columns.find((column) => column.mark !== null)?.mark ?? null;
  if (mark !== null) findings.push(finding("info", "thousands-marked", { mark }));
  const units = [...new Set(columns.flatMap(({ unit }) => unit?.name ?? []))];
  if (units.length > 0) findings.push(finding("info", "units-in-cells", { units }));
  if (columns.some(({ isPart }) => isPart)) findings.push(finding("info", "complex-cells", {}));
  for (const remarks of [remarked, flagged]) {
    const [remark] = remarks;
    if (remark === undefined) continue;
    const params = { text: quote(remark.text), count: remarks.length };
    findings.push(finding("caution", "cells-remarked", params, { line: remark.line }));
  }
  const firstLine = leftOut[0]?.line;
  if (firstLine !== undefined) {
    const params = { firstLine, count: leftOut.length, text: null };
    findings.push(finding("caution", "row-left-out", params, { line: firstLine }));
  }
  if (nextBlockLine !== null) {
    findings.push(finding("caution", "block-left-out", {}, { line: nextBlockLine }));
  }
  return findings;
}
