import type { MatchingPart } from "../../facts/matching/matching-part.js";
import type { Candidate } from "./candidate.js";
import type { View } from "./view.js";

/** Where a candidate's parts go: with a line known there are two ends, without one only that where the sweep was taken. */
export type Ends = "antenna-and-radio" | "antenna" | "analyser";

/** What to do, in one line. */
export function whatToDo(candidate: Candidate, view: View, ends: Ends, wireLengthM: number | null): string {
  const { lengthChange, atFeed, along, atRadio, settings } = candidate;
  const steps = [
    ...(lengthChange === 0 ? [] : [wireText(lengthChange, wireLengthM)]),
    ...(atFeed.length === 0 ? [] : [`${chainText(atFeed)}, at the antenna's end of the line`]),
    ...(along === null ? [] : [runText(along, view)]),
    ...(atRadio.length === 0 ? [] : [`${chainText(atRadio)}, ${RADIO_END[ends]}`]),
    ...(settings === null ? [] : [`a tuner ${RADIO_END[ends]}, set by hand once for each band or range wanted`]),
  ];
  return steps.length === 0 ? "Leave it as it is" : sentenceCase(steps.join("; and "));
}

const RADIO_END: Readonly<Record<Ends, string>> = {
  "antenna-and-radio": "at the radio's end of the line",
  antenna: "at the feed point, where the sweep was taken",
  analyser: "where the sweep was taken",
};

const sentenceCase = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function wireText(lengthChange: number, wireLengthM: number | null): string {
  const verb = lengthChange < 0 ? "shorten" : "lengthen";
  const share = `${Number(Math.abs(lengthChange * 100).toFixed(2))} %`;
  return wireLengthM === null
    ? `${verb} the wire by ${share}`
    : `${verb} the wire by ${Math.round(Math.abs(lengthChange * wireLengthM * 100))} cm in all (${share})`;
}

function runText(along: readonly MatchingPart[], { line }: View): string {
  const [first, second] = along;
  if (along.length === 1 && first?.kind === "line") {
    return line === null
      ? `put ${lineText(first.feedline)} between the place of the sweep and the radio`
      : `replace the line by ${lineText(first.feedline)}${first.feedline.lengthM > line.feedline.lengthM + 0.5 ? ", all of it, what is too long in a loose loop" : ""}`;
  }
  // With a known line: what lies before the part, the part, and what is left of the line.
  const isAtAntenna = along.length === 2 && line !== null;
  const part = (isAtAntenna ? first : second) ?? (first as MatchingPart);
  if (isAtAntenna || first?.kind !== "line") return `${partText(part)}, put into the line at the antenna's end`;
  const { lengthM } = first.feedline;
  return line === null
    ? `${lineText(first.feedline)} where the sweep was taken, and behind it ${partText(part)}`
    : `${partText(part)}, put into the line ${metres(lengthM)} from the antenna`;
}

/** Parts from the antenna on. */
const chainText = (chain: readonly MatchingPart[]): string =>
  chain.map(partText).join(chain.length > 1 ? ", then towards the radio " : "");

const PLACINGS = { series: "in series", across: "across the line" } as const;

/** A part in words: "a coil of 2.2 µH in series". */
export function partText(part: MatchingPart): string {
  switch (part.kind) {
    case "coil":
      return `a coil of ${withPrefix(part.inductanceHenry, "H")} ${PLACINGS[part.placing]}`;
    case "capacitor":
      return `a capacitor of ${withPrefix(part.capacitanceFarad, "F")} ${PLACINGS[part.placing]}`;
    case "transformer": {
      const isIdeal = part.magnetisingHenry === null && part.leakageHenry === null;
      return `a ${part.ratio}:1 transformer${isIdeal ? " (reckoned as ideal)" : ""}`;
    }
    case "line":
      return lineText(part.feedline);
    case "stub":
      return `a stub of ${lineText(part.feedline)} across the line, its far end ${part.end === "open" ? "open" : "shorted"}`;
  }
}

const lineText = ({
  title,
  lengthM,
  characteristicOhms,
}: {
  title: string;
  lengthM: number;
  characteristicOhms: number;
}) => `${metres(lengthM)} of ${title} (${characteristicOhms} Ω)`;

const metres = (length: number) => `${length.toFixed(2)} m`;

const PREFIXES = [
  { factor: 1e-3, prefix: "m" },
  { factor: 1e-6, prefix: "µ" },
  { factor: 1e-9, prefix: "n" },
  { factor: 1e-12, prefix: "p" },
];

/** "2.2 µH", "470 pF" */
function withPrefix(value: number, unit: string): string {
  const { factor, prefix } = PREFIXES.find((each) => value >= 0.9995 * each.factor) ?? { factor: 1e-12, prefix: "p" };
  return `${Number((value / factor).toPrecision(3))} ${prefix}${unit}`;
}
