/** Rows scanned from the bytes and rows split into cells are two ways through the reader; they must give the same. */
import { type FrequencyUnit, readSweeps, type Sweep } from "@feedpoint/core";
import { beforeEach, describe, expect, test, vi } from "vitest";
import { inUnit } from "../support/decimal-text.js";
import { bytesOf, notesOf } from "../support/known-load.js";
import { fc } from "../support/property.js";
import { present } from "../support/sweeps.js";

/** Counts the lines that the reader splits into cells, to show which way the rows took. */
const split = vi.hoisted(() => ({ lines: 0 }));
/** Counts the texts whose rows were scanned straight into columns. */
const plainRows = vi.hoisted(() => ({ texts: 0 }));

vi.mock("../../packages/core/src/reading/text/plain-rows.js", async (importOriginal) => {
  const original = await importOriginal<typeof import("../../packages/core/src/reading/text/plain-rows.js")>();
  return {
    ...original,
    scanPlainRows: (...parameters: Parameters<typeof original.scanPlainRows>) => {
      const rows = original.scanPlainRows(...parameters);
      if (rows !== null) plainRows.texts++;
      return rows;
    },
  };
});

vi.mock("../../packages/core/src/reading/delimited/cells.js", async (importOriginal) => {
  const cells = await importOriginal<typeof import("../../packages/core/src/reading/delimited/cells.js")>();
  return {
    ...cells,
    splitLine: (...parameters: Parameters<typeof cells.splitLine>) => {
      // Samples for deciding the dialect are split many lines at a time; a row of the table alone.
      split.lines++;
      return cells.splitLine(...parameters);
    },
  };
});

beforeEach(() => {
  split.lines = 0;
  plainRows.texts = 0;
});

/** Positive decimal text of any number of digits, perhaps with an exponent that keeps it between 1e-9 and 1e9. */
const positiveText = fc
  .tuple(fc.bigInt({ min: 1n, max: 10n ** 20n }), fc.integer({ min: 0, max: 22 }), fc.integer({ min: -3, max: 3 }))
  .map(([digits, places, exponent]) => {
    const padded = String(digits).padStart(places + 1, "0");
    const mantissa = places === 0 ? padded : `${padded.slice(0, -places)}.${padded.slice(-places)}`;
    return exponent === 0 ? mantissa : `${mantissa}e${exponent}`;
  });

interface Table {
  readonly unit: FrequencyUnit;
  readonly names: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const table: fc.Arbitrary<Table> = fc
  .record({
    unit: fc.constantFrom<FrequencyUnit>("Hz", "kHz", "MHz", "GHz"),
    names: fc.constantFrom(
      ["R", "X"],
      ["re(S11)", "im(S11)"],
      ["|S11|", "S11 (deg)"],
      ["|Z|", "theta"],
      ["SWR"],
      ["RL"],
    ),
    startHz: fc.integer({ min: 1_000_000, max: 400_000_000 }),
    points: fc.array(
      fc.record({
        step: fc.integer({ min: 1, max: 1_000_000 }),
        first: positiveText,
        second: positiveText,
        sign: fc.constantFrom("", "-", "+"),
      }),
      { minLength: 3, maxLength: 25 },
    ),
  })
  .map(({ unit, names, startHz, points }) => {
    let frequencyHz = startHz;
    const rows = points.map(({ step, first, second, sign }, i) => {
      frequencyHz += step;
      // One negative value at least, or the second column would look as if it had lost its sign.
      const cells = [inUnit(frequencyHz, unit), first, `${i === 0 ? "-" : sign}${second}`];
      return cells.slice(0, names.length + 1);
    });
    return { unit, names, rows };
  });

const writingWith = (delimiters: readonly string[]) =>
  fc
    .record({ delimiter: fc.constantFrom(...delimiters), decimal: fc.constantFrom(".", ",") })
    .filter(({ delimiter, decimal }) => delimiter !== decimal);

/** A way of writing a row that leaves its numbers alone, but not its bytes. */
interface Disguise {
  readonly name: string;
  readonly write: (cells: readonly string[], delimiter: string) => string;
  readonly delimiters: readonly string[];
}

const ALL = [",", ";", "\t"];
const DISGUISES: readonly Disguise[] = [
  {
    name: "every cell quoted",
    write: (cells, delimiter) => cells.map((cell) => `"${cell}"`).join(delimiter),
    delimiters: ALL,
  },
  {
    name: "cells padded with no-break spaces",
    write: (cells, delimiter) => cells.map((cell) => `\u00a0${cell}\u00a0`).join(delimiter),
    delimiters: ALL,
  },
  {
    // Tabs at the end of a row have a test of their own, among the pitfalls.
    name: "two empty cells at the end",
    write: (cells, delimiter) => [...cells, "", ""].join(delimiter),
    delimiters: [",", ";"],
  },
];

function textOfTable(
  { unit, names, rows }: Table,
  { delimiter, decimal }: { delimiter: string; decimal: string },
  write: (cells: readonly string[], delimiter: string) => string,
): Uint8Array {
  const header = [`Frequency (${unit})`, ...names].join(delimiter);
  const lines = rows.map((cells) =>
    write(
      cells.map((cell) => cell.replace(".", decimal)),
      delimiter,
    ),
  );
  return bytesOf(`${[header, ...lines].join("\n")}\n`);
}

/** What the reader makes of a text: its sweeps, or the words in which it refuses; and how many lines it split singly. */
function outcomeOf(bytes: Uint8Array): { sweeps: readonly Sweep[]; refusal: string; lines: number } {
  split.lines = 0;
  try {
    return { sweeps: readSweeps(bytes), refusal: "", lines: split.lines };
  } catch (error) {
    return { sweeps: [], refusal: error instanceof Error ? error.name : "", lines: split.lines };
  }
}

const bitsOf = (column: Readonly<Float64Array>) => [...new BigUint64Array(Float64Array.from(column).buffer)];
const columnsOf = (sweep: Sweep) =>
  [
    sweep.frequencyHz,
    sweep.reflectionMagnitude,
    ...(sweep.kind === "vector" ? [sweep.reflectionReal, sweep.reflectionImaginary] : []),
  ].map(bitsOf);

describe("rows scanned and rows split", () => {
  test.each(DISGUISES)("$name: the same sweeps, bit for bit, by the other way", ({ write, delimiters }) => {
    let read = 0;
    fc.assert(
      fc.property(table, writingWith(delimiters), (points, style) => {
        const plain = outcomeOf(textOfTable(points, style, (cells, delimiter) => cells.join(delimiter)));
        const other = outcomeOf(textOfTable(points, style, write));
        expect(other.refusal).toBe(plain.refusal);
        expect(other.sweeps.map(columnsOf)).toEqual(plain.sweeps.map(columnsOf));
        expect(other.sweeps.map(notesOf)).toEqual(plain.sweeps.map(notesOf));
        if (plain.sweeps.length === 0) return;
        read++;
        expect(other.lines - plain.lines, "rows that were split").toBeGreaterThanOrEqual(points.rows.length);
      }),
      { numRuns: 300 },
    );
    expect(read, "tables that were read at all").toBeGreaterThan(150);
  });

  test("one disguised row among plain ones makes no difference", () => {
    fc.assert(
      fc.property(table, writingWith(ALL), fc.nat(), (points, style, chosen) => {
        const disguised = points.rows[chosen % points.rows.length];
        const plain = outcomeOf(textOfTable(points, style, (cells, delimiter) => cells.join(delimiter)));
        let row = -1;
        const mixed = textOfTable(points, style, (cells, delimiter) => {
          row++;
          const isChosen = points.rows[row] === disguised;
          return isChosen ? cells.map((cell) => `"${cell}"`).join(delimiter) : cells.join(delimiter);
        });
        const other = outcomeOf(mixed);
        expect(other.refusal).toBe(plain.refusal);
        expect(other.sweeps.map(columnsOf)).toEqual(plain.sweeps.map(columnsOf));
      }),
      { numRuns: 200 },
    );
  });

  test("more bytes after the table do not reach into its last number", () => {
    const bytes = bytesOf("Frequency (Hz);SWR\n7000000;3\n7100000;1.53");
    const [sweep] = readSweeps(bytes.subarray(0, bytes.length - 1));
    expect(present(sweep, "the sweep").reflectionMagnitude[1]).toBe(0.2);
  });
});

describe("rows of a one-port", () => {
  const onePort = fc.record({
    options: fc
      .tuple(fc.constantFrom("S RI", "S MA", "S DB", "Z RI", "Y MA"), fc.constantFrom("50", "75"))
      .map(([kind, ohms]) => `${kind} R ${ohms}`),
    points: fc.array(
      fc.record({
        step: fc.integer({ min: -1, max: 1_000_000 }),
        first: positiveText,
        second: positiveText,
        sign: fc.constantFrom("", "-", "+"),
      }),
      { minLength: 1, maxLength: 40 },
    ),
    unit: fc.constantFrom<FrequencyUnit>("Hz", "kHz", "MHz", "GHz"),
    blank: fc.constantFrom(" ", "\t", "   "),
    lineEnd: fc.constantFrom("\n", "\r\n", "\r"),
  });

  test("the same sweeps, bit for bit, whether all are plain or one of them has a comment", () => {
    let read = 0;
    fc.assert(
      fc.property(onePort, fc.nat(), ({ options, points, unit, blank, lineEnd }, chosen) => {
        let frequencyHz = 7_000_000;
        const rows = points.map(({ step, first, second, sign }) => {
          frequencyHz += step;
          return [inUnit(frequencyHz, unit), `${sign}${first}`, second].join(blank);
        });
        const head = `# ${unit} ${options}`;
        const commented = rows.with(chosen % rows.length, `${rows[chosen % rows.length]} !`);
        plainRows.texts = 0;
        const plain = outcomeOf(bytesOf([head, ...rows].join(lineEnd)));
        expect(plainRows.texts, "texts of plain rows").toBe(1);
        const other = outcomeOf(bytesOf([head, ...commented].join(lineEnd)));
        expect(plainRows.texts, "texts of plain rows").toBe(1);
        expect(other.refusal).toBe(plain.refusal);
        expect(other.sweeps.map(columnsOf)).toEqual(plain.sweeps.map(columnsOf));
        expect(other.sweeps.map(notesOf)).toEqual(plain.sweeps.map(notesOf));
        if (plain.sweeps.length > 0) read++;
      }),
      { numRuns: 300 },
    );
    expect(read, "files that were read at all").toBeGreaterThan(200);
  });
});
