/** A row of a table of values: one point of a curve, in the words of its cells. */
export interface Row {
  readonly megahertz: number;
  /** Frequency in MHz, SWR, return loss and, where they are known, R and X */
  readonly cells: readonly string[];
}

export interface Values {
  /** "before", "after", or nothing where there is one curve */
  readonly name: string;
  readonly rows: readonly Row[];
}

/** The values of a chart's curves, out of the tables that it names. */
export function valuesOf(chart: Element): readonly Values[] {
  return (chart.getAttribute("data-values") ?? "").split(" ").flatMap((id) => {
    const table = document.getElementById(id);
    if (!(table instanceof HTMLTableElement)) return [];
    const rows = Array.from(table.tBodies[0]?.rows ?? [], (row) => {
      const cells = Array.from(row.cells, (cell) => cell.textContent?.trim() ?? "");
      return { megahertz: Number(cells[0]), cells };
    });
    return rows.length === 0 ? [] : [{ name: table.dataset.name ?? "", rows }];
  });
}

/** The index of the row nearest to a frequency. */
export function nearestRow(rows: readonly Row[], megahertz: number): number {
  let low = 0;
  let high = rows.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((rows[middle]?.megahertz ?? 0) <= megahertz) low = middle;
    else high = middle;
  }
  const distance = (index: number) => Math.abs((rows[index]?.megahertz ?? Number.POSITIVE_INFINITY) - megahertz);
  return distance(low) <= distance(high) ? low : high;
}

/** A row in words. */
export function inWords({ name, rows }: Values, index: number): string {
  const [megahertz, swr, returnLoss, resistance, reactance = ""] = rows[index]?.cells ?? [];
  const impedance =
    resistance === undefined
      ? ""
      : `, Z ${resistance} ${reactance.startsWith("−") ? "−" : "+"} j${reactance.replace("−", "")} Ω`;
  return `${name === "" ? "" : `${name}: `}${megahertz} MHz, SWR ${swr}${impedance}, return loss ${returnLoss} dB`;
}
