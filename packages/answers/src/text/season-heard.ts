import type { Agreement, HeardBeside } from "@feedpoint/core";
import type { SeasonTable } from "./season-table.js";
import type { TableColumn } from "./table.js";
import { fixed, signed, swr } from "./units.js";

const AGREEMENTS: Readonly<Record<Agreement, string>> = {
  "loss-confirmed": "the drop confirms the loss",
  "loss-not-heard": "the loss is not heard, as far as the reports tell",
  "worse-without-loss": "worse on the air, and not by loss on the way",
  better: "better on the air",
  nothing: "nothing to tell",
};

const COLUMNS: readonly TableColumn[] = [
  { title: "From" },
  { title: "to" },
  { title: "Band" },
  { title: "Best SWR", align: "right" },
  { title: "Loss at 10 MHz", align: "right", spare: 1 },
  { title: "Heard", align: "right" },
  { title: "Together" },
];

/** A change of SWR and a change on the air, side by side. */
export function heardTable(beside: readonly HeardBeside[]): SeasonTable {
  const rows = beside.map(({ before, after, band, swrBefore, swrAfter, loss, heard, agreement }) => [
    before,
    after,
    band,
    `${swr(swrBefore)} → ${swr(swrAfter)}`,
    loss === null ? "–" : `${signed(loss.at10MHzDb, 1)} dB`,
    heardText(heard),
    AGREEMENTS[agreement],
  ]);
  const above =
    rows.length === 0
      ? "Nothing to put beside what was heard: no two deployments were swept and heard under one name of the log."
      : "SWR and the air, side by side (heard: the second over the first, with 95 %; cannot tell is no equal):";
  return { name: "On the air", above, columns: COLUMNS, rows };
}

function heardText({ verdict, differenceDb, lowDb, highDb, receivers }: HeardBeside["heard"]): string {
  if (differenceDb === null || lowDb === null || highDb === null) return "cannot tell";
  const size = `${signed(differenceDb, 1)} ±${fixed((highDb - lowDb) / 2, 1)} dB (${receivers})`;
  return verdict === "cannot-tell" ? `cannot tell: ${size}` : size;
}
