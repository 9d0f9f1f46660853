import { type FindingKind, listed } from "./kind.js";

type Names = {
  readonly names: readonly string[];
};

type OfDip = {
  /** null: all sweeps are of one deployment */
  readonly deployment: string | null;
  readonly band: string;
};

type OfChange = {
  readonly deployment: string | null;
  readonly measure: keyof typeof MEASURES;
  readonly band: string | null;
  readonly course: string;
  readonly event: { readonly date: string; readonly what: string } | null;
  /** A fraction, Hz, or dB one way at 10 MHz; between low and high with 95 % */
  readonly size: number;
  readonly low: number;
  readonly high: number;
  readonly rivals: readonly string[];
};

const MEASURES = { share: "the share within the limit", dip: "the dip", loss: "the loss at 10 MHz" } as const;
const COURSES: Readonly<Record<string, string>> = {
  drift: "evenly",
  step: "at once, on a date of which the log says nothing",
  season: "with the seasons",
};

function changeText(measure: keyof typeof MEASURES, size: number): string {
  const sign = size > 0 ? "+" : "−";
  if (measure === "dip") return `${sign}${Math.abs(size / 1000).toFixed(0)} kHz`;
  return measure === "loss"
    ? `${sign}${Math.abs(size).toFixed(2)} dB`
    : `${sign}${Math.abs(100 * size).toFixed(0)} points`;
}

type OfLoss = {
  /** null: all sweeps are of one deployment */
  readonly deployment: string | null;
  /** One way at 10 MHz */
  readonly slopeDbPerMonth: number;
  readonly marginDbPerMonth: number;
  readonly totalDb: number;
  /** Date of the first sweep */
  readonly since: string;
};

const slopeText = (slope: number, margin: number) =>
  `${slope > 0 ? "+" : "−"}${Math.abs(slope).toFixed(2)} ± ${margin.toFixed(2)} dB a month at 10 MHz`;

const whereOf = ({ deployment, band }: OfDip) => (deployment === null ? band : `${deployment}, ${band}`);
const sizeOf = (hertz: number) => `${Math.abs(hertz / 1000).toFixed(0)} kHz`;

/** What is told of many sweeps, and of the log beside them. */
export const SEASON_FINDINGS = {
  "loss-rising": {
    meaning: "A deployment loses more and more on the way to the antenna.",
    words: ({ deployment, slopeDbPerMonth, marginDbPerMonth, totalDb, since }: OfLoss) =>
      `${deployment === null ? "Loss" : `${deployment}: loss`} is rising, ${slopeText(slopeDbPerMonth, marginDbPerMonth)} since ${since} (${totalDb.toFixed(1)} dB in all): a better SWR here is not a better antenna. Unless the antenna itself was changed, look for water in the line and for joints that corrode.`,
  },
  "loss-falling": {
    meaning: "A deployment loses less and less on the way to the antenna.",
    words: ({ deployment, slopeDbPerMonth, marginDbPerMonth, totalDb, since }: OfLoss) =>
      `${deployment === null ? "Loss" : `${deployment}: loss`} is falling, ${slopeText(slopeDbPerMonth, marginDbPerMonth)} since ${since} (${Math.abs(totalDb).toFixed(1)} dB in all): a worse SWR here is no worse antenna.`,
  },
  "changed-over-time": {
    meaning:
      "A dip, a share or the loss changed with an event that the log tells, with the seasons, or with one of several.",
    words: ({ deployment, band, measure, course, event, size, low, high, rivals }: OfChange) => {
      const what = `${deployment === null ? "" : `${deployment}, `}${band === null ? "" : `${band}: `}${MEASURES[measure]}`;
      const by = `${changeText(measure, size)} (${changeText(measure, low)} to ${changeText(measure, high)})`;
      const named = event === null ? "" : ` "${event.what}" of ${event.date}`;
      if (course === "event") return `${what} changed by ${by} with${named}.`;
      if (course === "step") return `${what} changed by ${by} ${COURSES.step}.`;
      if (course === "season") return `${what} goes with the seasons.`;
      return `${what} changed, and these sweeps do not say whether ${rivals.map((rival) => (rival === "event" ? `at once, with${named}` : COURSES[rival])).join(" or ")}.`;
    },
  },
  "group-value-missing": {
    meaning: "Sweeps without a value in the column that is grouped by are in no group.",
    words: ({ column, labels }: { column: string; labels: readonly string[] }) =>
      `In no group, for the log says nothing of them under ${column}: ${listed(labels)}.`,
  },
  "log-row-missing": {
    meaning: "The deployment log has no row for some sweeps.",
    words: ({ names }: Names) => `The log has no row for ${listed(names)}.`,
  },
  "log-row-repeated": {
    meaning: "The deployment log has more than one row for a sweep.",
    words: ({ names }: Names) => `In the log twice, of which the first row counts: ${listed(names)}.`,
  },
  "log-row-shared": {
    meaning: "A row of the deployment log stands for several files of one name.",
    words: ({ rows }: { rows: readonly { name: string; files: number }[] }) =>
      `Rows of the log that several files go by; write more of their path into it: ${listed(rows.map(({ name, files }) => `${name} (${files} files)`))}.`,
  },
  "log-not-read": {
    meaning: "Another deployment log lies beside sweeps that were graded, and was not read.",
    words: ({ read, others }: { read: string; others: readonly string[] }) =>
      `Only ${read} was read; ${others.join(", ")} was not.`,
  },
  "log-slip": {
    meaning: "The deployment log is not a table as it should be.",
    words: ({ slips }: { slips: readonly string[] }) => `The log is not as it should be: ${slips.join("; ")}.`,
  },
  "log-row-unmatched": {
    meaning: "Rows of the deployment log name no sweep that was graded.",
    words: ({ names }: Names) => `Rows of the log that no sweep here goes by: ${listed(names)}.`,
  },
  "log-date-unread": {
    meaning: "A date in the deployment log is in no form that is understood.",
    words: ({ dates }: { dates: readonly string[] }) =>
      `Dates of the log that are not written as 2026-05-02 or 2026-05-02 14:30 were not used: ${listed(dates)}.`,
  },
  "dip-drifts": {
    meaning: "The dip of a deployment wanders over time.",
    words: (params: OfDip & { totalHz: number; firstDate: string; lastDate: string }) =>
      `${whereOf(params)}: the dip has ${params.totalHz < 0 ? "fallen" : "risen"} about ${sizeOf(params.totalHz)} from ${params.firstDate} to ${params.lastDate}, by a straight line through its sweeps.`,
  },
  "dip-jumped": {
    meaning: "The dip of a deployment changed at once.",
    words: (params: OfDip & { changeHz: number; date: string }) =>
      `${whereOf(params)}: the dip ${params.changeHz < 0 ? "fell" : "rose"} ${sizeOf(params.changeHz)} at once by ${params.date}.`,
  },
  "dip-odd": {
    meaning: "The dip of one sweep lies far from those before and after it, which agree.",
    words: (params: OfDip & { departureHz: number; date: string }) =>
      `${whereOf(params)}: on ${params.date} the dip lay ${sizeOf(params.departureHz)} ${params.departureHz < 0 ? "below" : "above"} those before and after. Weather, another set-up, or another antenna's sweep? It counts for no drift.`,
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
