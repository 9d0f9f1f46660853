import {
  type CheckResult,
  EXPOSURE_RULES,
  type Exposure,
  type ExposureRuleId,
  type PowerResult,
} from "@feedpoint/core";
import { HINTS, type Voice } from "../words/remedies.js";
import type { NamedTable } from "./named-table.js";
import type { TableColumn } from "./table.js";
import { distance, watts } from "./units.js";

/** Rules that hold for everybody, also for those who do not belong to the household. */
const FOR_EVERYBODY: readonly ExposureRuleId[] = ["us-neighbours", "icnirp-2020", "eu-1999"];

/** What stands below a table that says how far people must stay away. */
export function keepAwayNote(people: CheckResult["people"], voice: Voice): string {
  const more = isAsked(people) ? "" : `; ${HINTS[voice].eachRule}`;
  return `Keep away: the least distance of anybody from the wire, by the strictest rule for everybody, ${onAirText(people)}${more}. An estimate: local rules and a real evaluation decide.`;
}

const isAsked = ({ distanceM, onAir }: CheckResult["people"]): boolean =>
  distanceM !== undefined || onAir !== undefined;

const onAirText = ({ onAir = 1 }: CheckResult["people"]): string =>
  onAir === 1 ? "on the air all the time" : `on the air ${onAir} of the time`;

/** How far anybody must stay away by the strictest of the rules for everybody. */
export function keepAway({ exposure }: Pick<PowerResult, "exposure">): string {
  const distances = exposure?.byRule.filter(({ rule }) => FOR_EVERYBODY.includes(rule)) ?? [];
  return distances.length === 0 ? "–" : distance(Math.max(...distances.map(({ distanceM }) => distanceM)));
}

/** By their ids, as short as a column takes. */
const RULE_TITLES: Readonly<Record<ExposureRuleId, string>> = {
  "us-household": "US household",
  "us-neighbours": "US neighbours",
  "icnirp-2020": "ICNIRP 2020",
  "eu-1999": "EU 1999",
};

const EXEMPT = { exempt: "yes", "not-exempt": "no", "too-near": "too near" } as const;

/** Distances by rule and, where people are said to be, whether each is kept there; null where nobody asked, or no power is known. */
export function exposureTable({ bands, people }: CheckResult): NamedTable | null {
  const at = people.distanceM;
  if (!isAsked(people)) return null;
  const rows = bands.flatMap(({ power }) =>
    power.flatMap((result) => (result.exposure === null ? [] : [rowOf(result, result.exposure, at)])),
  );
  const columns: readonly TableColumn[] = [
    { title: "Band" },
    { title: "Mode" },
    { title: "Power", align: "right" },
    { title: "average there", align: "right", spare: 2 },
    ...EXPOSURE_RULES.map(({ id }) => ({ title: RULE_TITLES[id], align: "right" as const })),
    ...(at === undefined
      ? []
      : [
          { title: `kept at ${Number(at.toFixed(2))} m` },
          { title: "by all with at most", align: "right" as const },
          { title: "US exempt", spare: 1 },
        ]),
  ];
  const intro = `People near the antenna: how far from the nearest point of the wire each rule is kept, ${onAirText(people)}, less the loss of the line where one is stated:`;
  return {
    name: "People",
    intro,
    columns,
    rows,
    outro: rows.length === 0 ? "No distance is told, for no power is told on any band." : outroFor(rows),
  };
}

/** The mark is explained where it stands. */
const outroFor = (rows: readonly (readonly string[])[]): string =>
  rows.flat().some((cell) => cell.includes(NEAR)) ? `${NEAR} ${NEAR_NOTE} ${OUTRO}` : OUTRO;

const NEAR = "†";
const NEAR_NOTE =
  "By the fields beside a wire short against the wave; else by the sum for the far field with reflection from the ground.";
const OUTRO =
  "Within a wavelength over 2π the sum for the far field is no more than a guide. US: 47 CFR 1.1310, household: those who were told how to stay safe (97.13(c)); US exempt: from evaluation, 1.1307(b)(3)(i)(C), never from the limits. ICNIRP 2020 and EU 1999/519/EC: general public. Ends of the wire, counterpoise and line without a choke count as wire; nobody may touch any of it. An estimate for planning, made of what was stated: local rules, a real evaluation and the regulator decide.";

function rowOf({ band, mode, bestWatts }: PowerResult, exposure: Exposure, at: number | undefined): readonly string[] {
  const cell = (rule: ExposureRuleId) => {
    const told = exposure.byRule.find((each) => each.rule === rule);
    return told === undefined ? "–" : `${distance(told.distanceM)}${told.by === "near-wire" ? NEAR : ""}`;
  };
  return [
    band,
    mode,
    watts(bestWatts),
    watts(exposure.averageWatts),
    ...EXPOSURE_RULES.map(({ id }) => cell(id)),
    ...(at === undefined ? [] : placeCells(exposure, at)),
  ];
}

function placeCells({ byRule, isExempt }: Exposure, at: number): readonly string[] {
  const broken = byRule.filter(({ distanceM }) => distanceM > at).map(({ rule }) => RULE_TITLES[rule]);
  const greatest = byRule.flatMap(({ greatestWatts }) => greatestWatts ?? []);
  return [
    broken.length === 0 ? "all" : broken.length === byRule.length ? "none" : `not ${broken.join(", ")}`,
    greatest.length === 0 ? "–" : watts(Math.min(...greatest)),
    isExempt === null ? "–" : EXEMPT[isExempt],
  ];
}
