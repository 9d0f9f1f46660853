import { type Finding, finding } from "../finding.js";
import { ReadError } from "../read-error.js";
import { type Sweep, type SweepDetails, scalarSweep, vectorSweep } from "../sweep.js";
import { arrangePoints, type Points } from "./arrange.js";
import { readDelimited } from "./delimited.js";
import type { ReadOptions } from "./options.js";
import { takenAtFrom } from "./taken-at.js";
import { sourceText } from "./text.js";
import { readTouchstone } from "./touchstone.js";
import { looksLikeTouchstone } from "./touchstone-scan.js";

/**
 * Reads the sweeps that a file holds: Touchstone or delimited text, whichever its content is.
 *
 * @param bytes the file as it lies on the disk; not changed and not kept
 * @param options the file's name, and what the user says about it
 * @returns at least one sweep, each checked, in ascending frequency and frozen
 * @throws ReadError with file, line, what was found and what to do, for anything that cannot be read with confidence
 */
export function readSweeps(bytes: Uint8Array, options: ReadOptions = {}): Sweep[] {
  const file = options.fileName ?? "input";
  const text = sourceText(bytes, file);
  const isTouchstone = looksLikeTouchstone(text) || isNamedTouchstone(file, options);
  const read = isTouchstone ? readTouchstone(text, options) : readDelimited(text, options);
  const findings: Finding[] =
    text.encoding === "UTF-8" ? [] : [finding("info", "encoding", `Read as ${text.encoding}.`)];
  findings.push(...read.findings);
  const arranged = arrangePoints(read.points, findings);
  const comments = read.comments.filter((comment) => comment !== "");
  return arranged.map((points, index) => {
    if (points.frequencyHz.length === 0) {
      throw new ReadError({
        code: "no-data",
        file,
        found: "no row has a frequency above 0 Hz",
        expected: "frequencies in the first column",
      });
    }
    const number = arranged.length > 1 ? ` (sweep ${index + 1} of ${arranged.length})` : "";
    return build(points, {
      label: baseName(file) + number,
      source: { file, format: isTouchstone ? "touchstone" : "delimited", description: read.description, comments },
      takenAt: takenAtFrom(comments, options.fileName),
      referenceOhms: read.referenceOhms,
      findings: [...findings, ...findingsAbout(points)],
    });
  });
}

/** A name like antenna.s1p breaks the tie for a file whose content is no delimited text with a header either. */
function isNamedTouchstone(file: string, options: ReadOptions): boolean {
  return /\.(s\d+p|ts)$/i.test(file) && options.columns === undefined && options.delimiter === undefined;
}

function build(points: Points, details: SweepDetails): Sweep {
  const { frequencyHz, reflectionMagnitude, reflectionReal, reflectionImaginary } = points;
  return reflectionReal === null || reflectionImaginary === null
    ? scalarSweep(details, { frequencyHz, reflectionMagnitude })
    : vectorSweep(details, { frequencyHz, reflectionReal, reflectionImaginary });
}

function findingsAbout({ frequencyHz, reflectionMagnitude, line }: Points): readonly Finding[] {
  const findings: Finding[] = [];
  let beyond = 0;
  let first = -1;
  for (let i = 0; i < reflectionMagnitude.length; i++) {
    if ((reflectionMagnitude[i] as number) <= 1) continue;
    beyond++;
    if (first < 0) first = i;
  }
  if (beyond > 0) {
    findings.push(
      finding(
        "caution",
        "beyond-total-reflection",
        `${beyond} of ${reflectionMagnitude.length} points reflect more than they receive (ρ > 1): noise, interference or calibration. SWR there counts as infinite.`,
        { line: line[first] as number },
      ),
    );
  }
  if (frequencyHz.length === 1) {
    findings.push(finding("caution", "single-point", "The sweep has a single point: no band can be judged from it."));
  }
  return findings;
}

const baseName = (file: string) => file.replace(/^.*[/\\]/, "");
