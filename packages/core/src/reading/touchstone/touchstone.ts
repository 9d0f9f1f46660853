import { ReadError } from "../../input/read-error.js";
import { type Finding, finding } from "../../sweep/finding.js";
import type { ReadOptions } from "../options/read-options.js";
import type { ReadPoints } from "../points/read-points.js";
import type { SourceText } from "../text/text.js";
import { oddities } from "./oddities.js";
import { groupRecords } from "./records.js";
import { reflectionPoints } from "./reflection-points.js";
import { scanTouchstone, type TouchstoneScan } from "./scan.js";

const FORMAT_WORDS = { RI: "real and imaginary", MA: "magnitude and angle", DB: "dB and angle" };

/**
 * Reads the reflection at one port from a Touchstone file.
 *
 * Source for all rules: IBIS Open Forum, Touchstone File Format Specification, Version 2.1 (26 January 2024), which
 * covers keyword-free files (called version 1 here) as well.
 *
 * @throws ReadError where the file breaks a rule in a way that leaves its meaning open
 */
export function readTouchstone(text: SourceText, options: ReadOptions): ReadPoints {
  const scan = scanTouchstone(text);
  const findings: Finding[] = [...scan.findings];
  const records = groupRecords(scan, text.file, options.port ?? 1, findings);
  const port = (options.port ?? 1) - 1;
  if (!Number.isInteger(port) || port < 0 || port >= records.ports) {
    throw new ReadError({
      code: "bad-option",
      file: text.file,
      found: `port ${port + 1} was asked for, but the file has ${records.ports}`,
      remedy: "Give a port that the file has.",
    });
  }
  const references = referencesOf(scan, records.ports, text.file);
  const points = reflectionPoints(scan, records, references, port, text.file, findings);
  const { options: line } = scan;
  const version = scan.keywords.version === null ? "1" : scan.keywords.version;
  if (line.unitIsDefault) {
    findings.push(finding("caution", "frequency-unit-default", {}, { line: scan.optionLine }));
  }
  findings.push(...oddities(scan, records, points, text.file, options));
  return {
    format: "touchstone",
    points,
    referenceOhms: references[port] as number,
    description: `Touchstone ${version}, ${records.ports}-port ${line.parameter}, ${FORMAT_WORDS[line.format]}, ${line.unit}`,
    comments: scan.comments,
    findings,
  };
}

function referencesOf(scan: TouchstoneScan, ports: number, file: string): readonly number[] {
  const stated = scan.keywords.references ?? scan.options.references;
  if (stated.length === ports) return stated;
  if (stated.length === 1) return new Array<number>(ports).fill(stated[0] as number);
  throw new ReadError({
    code: "bad-option-line",
    file,
    line: scan.optionLine,
    found: `${stated.length} reference impedances for ${ports} ports`,
    expected: "one for all ports, or one per port",
  });
}
