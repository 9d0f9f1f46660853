/** Lists of SWR as people jot them down, all invented, written with their truth by three who did not know the reader. */
import { readFileSync } from "node:fs";
import { ReadError, type Reading, readSweeps } from "@feedpoint/core";
import { describe, expect, test } from "vitest";

interface Noted {
  /** "b40m": a band; "f7.03": a frequency in MHz; "s7-7.2": a stretch */
  readonly place: string;
  readonly low: number;
  readonly high: number;
  readonly atLeast: boolean;
}

interface List {
  readonly text: string;
  readonly readings: readonly Noted[];
  /** Lines, counted from 1, that look like a reading and are none */
  readonly left: readonly number[];
}

const LISTS = JSON.parse(readFileSync(new URL("noted-lists.json", import.meta.url), "utf8")) as readonly List[];
/** One is a table of frequencies and a title, one a sweep of one band without a header: they are no notes. */
const NO_NOTES = new Set([35, 70]);

const placeOf = ({ band, lowHz, highHz }: Reading): string => {
  if (lowHz === highHz) return `f${lowHz / 1e6}`;
  return band === null ? `s${lowHz / 1e6}-${highHz / 1e6}` : `b${band}`;
};

/** Of a scale that ended without a number any bound is right. */
const told = ({ place, low, high, atLeast }: Noted, endless: boolean): string =>
  atLeast ? `${place} at least${endless ? "" : ` ${high}`}` : `${place} ${low}-${high}`;

function faultsOf({ text, readings }: List): readonly string[] {
  const sweeps = readSweeps(text, { fileName: "noted.txt" });
  const read = sweeps.flatMap((sweep) => (sweep.kind === "scalar" ? sweep.readings : []));
  const got = read.map((each) => ({
    noted: {
      place: placeOf(each),
      low: each.swrLow,
      high: each.swrHigh,
      atLeast: each.isAtLeast || each.swrHigh === Infinity,
    },
    endless: each.swrHigh === Infinity,
  }));
  const wanted = readings.map((each) => {
    const endless = got.some(({ noted, endless }) => noted.place === each.place && endless);
    return told(each, endless);
  });
  const found = got.map(({ noted, endless }) => told(noted, endless));
  return [
    ...wanted.filter((each) => !found.includes(each)).map((each) => `not read: ${each}`),
    ...found.filter((each) => !wanted.includes(each)).map((each) => `read: ${each}`),
  ];
}

describe("lists noted by hand", () => {
  test.each(LISTS.map((list, i) => ({ i, list })).filter(({ i }) => !NO_NOTES.has(i)))(
    "number $i is read as it was meant",
    ({ list }) => {
      expect(faultsOf(list), list.text).toEqual([]);
    },
  );

  test.each(LISTS.map((list, i) => ({ i, list })).filter(({ i }) => !NO_NOTES.has(i)))(
    "number $i names the lines below its first reading that are none",
    ({ list: { text, left } }) => {
      const sweeps = readSweeps(text, { fileName: "noted.txt" });
      const named = sweeps[0].findings.flatMap(({ code, line }) => (code === "row-left-out" ? [line] : []));
      // A title with a date above the readings is plainly one.
      expect(left.filter((line) => line > 1 && !named.includes(line))).toEqual([]);
    },
  );

  test("one without a header, all of one band, is refused with the columns to say", () => {
    expect(() => readSweeps(LISTS[70]?.text ?? "", { fileName: "noted.txt" })).toThrow(ReadError);
  });
});
