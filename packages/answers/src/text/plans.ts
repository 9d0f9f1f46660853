import {
  type Activity,
  type ActivityRegion,
  type BandPlan,
  emissionsIn,
  greatestPowersIn,
  isPowerUnconfirmed,
  type PlanSegment,
  planCertainty,
  usableBands,
} from "@feedpoint/core";
import { certaintyText } from "../words/verdicts.js";
import { shortCautions } from "./cautions.js";
import { type TableColumn, textTable, wrap } from "./table.js";
import { emissions, fixed, power, span, use } from "./units.js";

/** The plans that there are, one a line. */
export function planListText(plans: readonly BandPlan[], width: number): string {
  const columns: readonly TableColumn[] = [
    { title: "Plan" },
    { title: "Title" },
    { title: "Classes", spare: 2 },
    { title: "Confirmed", spare: 1 },
  ];
  const rows = plans.map((plan) => [
    plan.id,
    plan.title,
    plan.classes?.join(", ") ?? "–",
    certaintyText(planCertainty(plan)),
  ]);
  return [
    textTable(columns, rows, { width }),
    "",
    wrap(
      "feedpoint plans <plan> prints one, feedpoint plans --activity where operators commonly meet. Band plans are data with their edition and source, not legal advice.",
      width,
    ),
  ].join("\n");
}

/** One plan as a table of its segments, for a licence class (null: for all), for some bands (undefined: for all). */
export function planText(
  plan: BandPlan,
  licenceClass: string | null,
  bands: readonly string[] | undefined,
  width: number,
): string {
  const columns: readonly TableColumn[] = [
    { title: "Band" },
    { title: "MHz" },
    { title: "For" },
    { title: "May send", spare: 1 },
    { title: "widest", align: "right", spare: 2 },
    { title: "At most", spare: 2 },
    { title: "Known from", spare: 3 },
  ];
  const rows = usableBands(plan, licenceClass)
    .filter(({ band }) => bands === undefined || bands.includes(band))
    .flatMap(({ band, segments }) =>
      segments.map((segment) => [
        band,
        span(segment),
        use(segment.use),
        emissions(emissionsIn(segment, licenceClass)),
        segment.maxBandwidthHz === undefined ? "–" : kilohertz(segment.maxBandwidthHz),
        powersText(segment, licenceClass),
        knownFrom(plan, segment, licenceClass),
      ]),
    );
  return [
    wrap(`${plan.title} (${plan.id})${licenceClass === null ? "" : `, class ${licenceClass}`}`, width),
    wrap(`Edition: ${plan.edition}`, width, "  "),
    wrap(`Source: ${plan.source.title}`, width, "  "),
    "",
    textTable(columns, rows, { width }),
    "",
    ...plan.notes.map((note) => wrap(`- ${note}`, width, "  ")),
    "",
    "Known from:",
    ...plan.sources.map(({ id, title, read }) =>
      wrap(`- ${id}: ${title}${read === undefined ? "" : ` (${read})`}`, width, "  "),
    ),
    wrap("Not legal advice: check with the authority before transmitting.", width),
    "",
    shortCautions(width, { hasHighVoltage: true }),
  ].join("\n");
}

/** A width, kHz. */
const kilohertz = (hz: number): string => `${Number((hz / 1000).toFixed(1))} kHz`;

function powersText(segment: PlanSegment, licenceClass: string | null): string {
  const { limits, ofSideband } = greatestPowersIn(segment, licenceClass);
  const all = limits.length === 0 ? "–" : limits.map(power).join(", ");
  return ofSideband === null ? all : `SSB ${power(ofSideband)}, else ${all}`;
}

/** The sources of a segment; what rests on one secondary page is marked. */
function knownFrom({ sources }: BandPlan, segment: PlanSegment, licenceClass: string | null): string {
  const names = segment.sources.join(", ");
  if (segment.confirmed) return isPowerUnconfirmed(segment, licenceClass) ? `${names}; power: weak` : names;
  const wasRead = sources.some(({ id, kind }) => segment.sources.includes(id) && kind !== "memory");
  return wasRead ? `${names} (weak)` : "memory";
}

const DIALS: Readonly<Record<Activity["dial"], string>> = {
  usb: "USB dial",
  cw: "Morse",
  carrier: "carrier",
  centre: "centre",
};

const REGIONS: Readonly<Record<ActivityRegion, string>> = {
  all: "everywhere",
  "1": "Region 1",
  "2": "Region 2",
  "3": "Region 3",
  us: "United States",
  jp: "Japan",
  uk: "United Kingdom",
};

/** Frequencies where operators commonly meet, one a line, to 100 Hz. */
export function activityText(activities: readonly Activity[], width: number): string {
  if (activities.length === 0) return "No common activity is known there.";
  const columns: readonly TableColumn[] = [
    { title: "Activity" },
    { title: "MHz", align: "right" },
    { title: "Band" },
    { title: "Meant as", spare: 2 },
    { title: "Region" },
    { title: "Known from", spare: 1 },
    { title: "Note", spare: 3 },
  ];
  const rows = activities.map(({ label, frequencyHz, band, dial, regions, confirmed, sources, note }) => [
    label,
    fixed(frequencyHz / 1e6, 4),
    band,
    DIALS[dial],
    regions.map((region) => REGIONS[region]).join(", "),
    confirmed ? sources.join(", ") : "memory",
    note ?? "",
  ]);
  return [
    textTable(columns, rows, { width }),
    "",
    wrap(
      "Common practice, not rules: your licence and band plan decide. Signals lie above the frequency of a USB dial.",
      width,
    ),
  ].join("\n");
}
