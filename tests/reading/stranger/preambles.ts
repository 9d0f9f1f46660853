/** Talk above and below a table, settings, and headers of several lines. */
import { joinRows, number, roomy } from "./layout.js";
import { PAGES } from "./pages.js";
import { plainTable } from "./plain-tables.js";
import { draftOf, linesOf, type Table, tableOf, type Variants } from "./printed-table.js";
import { at, type Rng } from "./random.js";
import { talk } from "./talk.js";
import { TOLD_ABOVE } from "./told-above.js";
import type { Draft } from "./truth.js";

/** A row of text with the columns' delimiters, as a spreadsheet writes it. */
const asRow = (text: string, table: Table): string =>
  table.layout.delimiter === " " ? text : text + table.layout.delimiter.repeat(table.head.length - 1);

const megahertz = (hz: number, { layout }: Table): string => number(hz / 1e6, 3, layout);
const startOf = (table: Table): string => megahertz(at(table.swept.hz, 0), table);
const stopOf = (table: Table): string => megahertz(at(table.swept.hz, table.swept.hz.length - 1), table);

const AROUND: Variants = {
  "talk above": (rng) => {
    const table = plainTable(rng, { further: rng.chance(0.3) });
    return { table, lines: [...talk(rng, rng.int(1, 6)), ...rng.maybe(""), ...linesOf(table)] };
  },
  "talk above as rows of a spreadsheet": (rng) => {
    const table = plainTable(rng);
    return {
      table,
      lines: [
        ...talk(rng, rng.int(1, 4)).map((line) => asRow(line.replace(/[,;|]/g, ""), table)),
        asRow("", table),
        ...linesOf(table),
      ],
    };
  },
  "comments by a mark": (rng) => {
    const table = plainTable(rng);
    const mark = rng.pick(["# ", "; ", "! ", "// ", "% ", "* ", "' ", "-- "]);
    const lines = linesOf(table);
    if (rng.chance(0.4)) lines.splice(rng.int(2, lines.length - 1), 0, `${mark}a boat went by here`);
    return { table, lines: [...talk(rng, 3, mark), ...lines] };
  },
  "sep= line": (rng) => {
    const table = plainTable(rng, { layout: roomy(rng) });
    return { table, lines: [`sep=${table.layout.delimiter}`, ...linesOf(table)] };
  },
  "table of settings above": (rng) => {
    const table = plainTable(rng);
    const { layout, swept } = table;
    const settings = joinRows(
      [
        ["Setting", "Value"],
        ["Start (MHz)", startOf(table)],
        ["Stop (MHz)", stopOf(table)],
        ["Points", String(swept.hz.length)],
        ["Averages", "4"],
        ["Settle time (ms)", "20"],
      ],
      layout,
    );
    return { table, lines: [...(rng.chance(0.5) ? settings : settings.slice(1)), "", ...linesOf(table)] };
  },
  "settings in a row of names and a row of numbers": (rng) => {
    const table = plainTable(rng);
    const numbers = [startOf(table), stopOf(table), String(table.rows.length)];
    const settings = joinRows([["Start MHz", "Stop MHz", "Points"], numbers], table.layout);
    return { table, lines: [...settings, "", ...linesOf(table)] };
  },
  "rule below the header": (rng) => {
    const table = plainTable(rng);
    const [head = "", ...rows] = linesOf(table);
    return { table, lines: [head, rng.pick(["-", "=", "_"]).repeat(head.length), ...rows] };
  },
  "header of two lines, units below": (rng) => {
    const table = plainTable(rng, { layout: roomy(rng) });
    const units = table.units.map((unit) => (unit === "" ? "" : rng.chance(0.5) ? unit : `(${unit})`));
    return {
      table,
      lines: [...talk(rng, rng.int(0, 2)), ...joinRows([table.names, units, ...table.rows], table.layout)],
    };
  },
  "header of words in two lines": (rng) => {
    const table = tableOf(rng, {
      kinds: ["r-x"],
      layout: { delimiter: rng.pick([";", "\t"] as const) },
      plainUnits: true,
    });
    return {
      table,
      lines: joinRows(
        [
          ["Test", "Series", "Series"],
          [`frequency (${table.layout.unit})`, "resistance (ohm)", "reactance (ohm)"],
          ...table.rows,
        ],
        table.layout,
      ),
    };
  },
  "talk with numbers just above, no header mark": (rng) => {
    const table = plainTable(rng);
    return {
      table,
      lines: [
        `17 m up, 3 guys, ${table.rows.length} points wanted`,
        rng.pick(["7 knots of wind, 4 degrees", "12.6 V, 18 April", "2026-04-18 09:35 12"]),
        ...linesOf(table),
      ],
    };
  },
};

/** A file with something around its table, or stated above it, or between its rows. */
export function preambles(rng: Rng): Draft {
  return draftOf(rng, { ...AROUND, ...TOLD_ABOVE, ...PAGES });
}
