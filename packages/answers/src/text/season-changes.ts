import type { ChangeOverTime, Course, FactorEffect, LossHistory, Measure } from "@feedpoint/core";
import { grouped } from "@feedpoint/core/for-command";
import type { SeasonTable } from "./season-table.js";
import type { TableColumn } from "./table.js";
import { fixed, signed } from "./units.js";

const MEASURES: Readonly<Record<Measure, string>> = { share: "within limit", dip: "dip", loss: "loss" };

/** How the sizes of each are written. */
const SIZES: Readonly<Record<Measure, { readonly unit: string; readonly scale: number; readonly decimals: number }>> = {
  share: { unit: "points", scale: 100, decimals: 0 },
  dip: { unit: "kHz", scale: 1e-3, decimals: 0 },
  loss: { unit: "dB", scale: 1, decimals: 2 },
};

/** "+48 (+21 to +76) kHz" */
function withInterval(measure: Measure, size: number | null, between: FactorEffect["between"]): string {
  if (size === null || between === null) return "–";
  const { unit, scale, decimals } = SIZES[measure];
  const [middle, low, high] = [size, between.low, between.high].map((each) => signed(scale * each, decimals));
  return `${middle} (${low} to ${high}) ${unit}`;
}

const FACTOR_COLUMNS: readonly TableColumn[] = [
  { title: "Factor" },
  { title: "of" },
  { title: "Band" },
  { title: "on" },
  { title: "Effect (95 %)", align: "right" },
  { title: "Verdict" },
];

/** What each factor does, the others held equal; what cannot be told for one reason is one row. */
export function factorTable(all: readonly FactorEffect[], names: readonly string[]): SeasonTable {
  const rows = names.flatMap((name) => factorRows(all.filter(({ factor }) => factor === name)));
  const above =
    rows.length === 0
      ? `Nothing can be told of ${names.join(", ")}: no sweep has a value under each of them, or all say the same.`
      : `What ${names.join(", ")} do at once, each with the others held equal (${Math.max(...all.map(({ sweeps }) => sweeps))} sweeps), at the antenna's end where the line is known:`;
  return { name: "Factors", above, columns: FACTOR_COLUMNS, rows };
}

function factorRows(effects: readonly FactorEffect[]): readonly (readonly string[])[] {
  const isBeyondSweeps = ({ verdict, why }: FactorEffect) => verdict === "cannot-tell" && why !== "unsure";
  const told = effects
    .filter((effect) => !isBeyondSweeps(effect))
    .map((effect) => [
      effect.factor,
      effect.of,
      effect.band ?? "–",
      MEASURES[effect.measure],
      withInterval(effect.measure, effect.effect, effect.between),
      verdictText(effect),
    ]);
  // What these sweeps cannot tell for one and the same reason is said once.
  const untold = [...grouped(effects.filter(isBeyondSweeps), verdictText)].map(([verdict, alike]) => {
    const each = (textOf: (effect: FactorEffect) => string) => wholeOrListed(alike, effects, textOf);
    return [
      alike[0]?.factor ?? "–",
      each(({ of }) => of.split(" against ")[0] ?? of),
      each(({ band }) => band ?? "–"),
      each(({ measure }) => MEASURES[measure]),
      "–",
      verdict,
    ];
  });
  return [...told, ...untold];
}

/** "all" where some effects have every value that all of them have. */
function wholeOrListed<T>(some: readonly T[], all: readonly T[], textOf: (each: T) => string): string {
  const had = new Set(some.map(textOf));
  const [only] = had;
  if (had.size === 1 && only !== undefined) return only;
  return had.size === new Set(all.map(textOf)).size ? "all" : [...had].join(", ");
}

function verdictText({ verdict, why, together, missing }: FactorEffect): string {
  if (verdict === "effect") return "yes";
  if (verdict === "none-seen") return "none seen";
  switch (why) {
    case "together": {
      const sweep = Object.entries(missing ?? {}).map(([name, value]) => `${name} ${value}`);
      return `cannot tell: changed together with ${together}${sweep.length === 0 ? "" : `; sweep once with ${sweep.join(" and ")}`}`;
    }
    case "too-few":
      return "cannot tell: too few sweeps for so many factors";
    case "once":
      return "cannot tell: one sweep alone; repeat it";
    default:
      return "cannot tell: more sweeps would";
  }
}

const CHANGE_COLUMNS: readonly TableColumn[] = [
  { title: "Deployment" },
  { title: "Band" },
  { title: "of" },
  { title: "Change (95 %)", align: "right" },
  { title: "How" },
];

const COURSES: Readonly<Record<Course, string>> = {
  nothing: "not at all",
  drift: "evenly over time",
  event: "at once",
  step: "at once, on a date of which the log says nothing",
  season: "with the seasons",
  "cannot-tell": "cannot tell",
};

/** What changed over time, and whether evenly, with an event or with the seasons. */
export function changeTable(changes: readonly ChangeOverTime[]): SeasonTable {
  const rows = changes
    .filter(({ course }) => course !== "nothing")
    .map(({ deployment, band, measure, size, between, course, event, rivals }) => [
      deployment ?? "all",
      band ?? "–",
      MEASURES[measure],
      withInterval(measure, size, between),
      course === "cannot-tell"
        ? `cannot tell: ${rivals.map((rival) => COURSES[rival]).join(" or ")}`
        : `${COURSES[course]}${event === null ? "" : `, with "${event.what}" of ${event.date}`}`,
    ]);
  const above = "What changed over time beyond chance, and how; the jumps of dips are told below as well:";
  return { name: "Changes", above, columns: CHANGE_COLUMNS, rows };
}

const lossColumns = (isStated: boolean): readonly TableColumn[] => [
  { title: "Deployment" },
  { title: "Sweeps", align: "right" },
  { title: "From", spare: 1 },
  { title: "to", spare: 1 },
  ...(isStated ? [{ title: "Held against" }] : []),
  { title: "Loss a month", align: "right" },
  { title: isStated ? "Last against it" : "Last against first", align: "right" },
];

/** How loss went, by deployment. */
export function lossTable(losses: readonly LossHistory[]): SeasonTable {
  // The first one is what is held against unless another was stated.
  const isStated = losses.some(({ reference, sweeps }) => reference !== sweeps[0]?.label);
  const rows = losses.map(({ deployment, reference, sweeps, slopeDbPerMonth, slopeMarginDbPerMonth }) => [
    deployment ?? "all",
    String(sweeps.length),
    sweeps[0]?.date ?? "–",
    sweeps.at(-1)?.date ?? "–",
    ...(isStated ? [reference] : []),
    slopeDbPerMonth === null || slopeMarginDbPerMonth === null
      ? "–"
      : `${signed(slopeDbPerMonth, 2)} ±${fixed(slopeMarginDbPerMonth, 2)} dB`,
    `${signed(sweeps.at(-1)?.at10MHzDb ?? 0, 2)} ±${fixed(sweeps.at(-1)?.marginDb ?? 0, 2)} dB`,
  ]);
  const above =
    rows.length === 0
      ? "No loss to follow over time: it takes two dated sweeps wide enough to hold frequencies far from any match."
      : "How loss went over time, one way at 10 MHz, by what comes back far from any match. A better SWR at more loss is not a better antenna:";
  return { name: "Loss over time", above, columns: lossColumns(isStated), rows };
}
