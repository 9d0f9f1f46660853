import { type HeardComparison, type HeardOnBand, type HeardResult, type HeardWhere, SECTORS } from "@feedpoint/core";
import { fixed } from "../text/units.js";
import type { Column } from "./column.js";

/** What is told of a deployment on a band. */
export const HEARD_COLUMNS: readonly Column<HeardOnBand>[] = [
  { key: "deployment", title: "Deployment", text: ({ deployment }) => deployment },
  { key: "band", title: "Band", text: ({ band }) => band },
  { key: "reports", title: "Reports", align: "right", text: ({ reports }) => String(reports) },
  { key: "receivers", title: "Receivers", align: "right", text: ({ receivers }) => String(receivers) },
  {
    key: "medianSnrDb",
    title: "Median dB",
    align: "right",
    text: ({ medianSnrDb }) => (medianSnrDb === null ? "–" : fixed(medianSnrDb, 0)),
  },
  {
    key: "farthestKm",
    title: "Farthest km",
    align: "right",
    text: ({ farthestKm }) => (farthestKm === null ? "–" : fixed(farthestKm, 0)),
  },
  { key: "first", title: "First UTC", spare: 2, text: ({ first }) => first },
  { key: "last", title: "Last UTC", spare: 1, text: ({ last }) => last },
];

/** How many receivers lie in each direction. */
export const WHERE_COLUMNS: readonly Column<HeardWhere>[] = [
  { key: "deployment", title: "Deployment", text: ({ deployment }) => deployment },
  { key: "band", title: "Band", text: ({ band }) => band },
  ...SECTORS.map(
    (sector): Column<HeardWhere> => ({
      key: sector,
      title: sector,
      align: "right",
      text: ({ sectors }) => String(sectors.find((each) => each.sector === sector)?.receivers ?? "–"),
    }),
  ),
  { key: "unplaced", title: "not placed", align: "right", text: ({ unplaced }) => String(unplaced) },
];

/** A comparison, as programs read it. */
export const COMPARISON_COLUMNS: readonly Column<HeardComparison>[] = [
  { key: "before", value: ({ before }) => before },
  { key: "after", value: ({ after }) => after },
  { key: "band", value: ({ band }) => band },
  { key: "verdict", value: ({ verdict }) => verdict },
  { key: "differenceDb", about: "after over before, powers taken off", value: ({ differenceDb }) => differenceDb },
  { key: "lowDb", value: ({ lowDb }) => lowDb },
  { key: "highDb", value: ({ highDb }) => highDb },
  { key: "receivers", value: ({ receivers }) => receivers },
  { key: "pairs", value: ({ pairs }) => pairs },
  { key: "switches", value: ({ switches }) => switches },
  { key: "sameSlot", value: ({ sameSlot }) => sameSlot },
  { key: "offScale", value: ({ offScale }) => offScale },
  { key: "withPowers", value: ({ withPowers }) => withPowers },
  { key: "onlyBefore", value: ({ heardOfOne }) => heardOfOne.onlyBefore },
  { key: "onlyAfter", value: ({ heardOfOne }) => heardOfOne.onlyAfter },
];

/** Placed listeners first; who is nowhere has no direction. */
export const whereRows = ({ where }: HeardResult): readonly HeardWhere[] =>
  where.filter(({ listeners }) => listeners.length > 0);
