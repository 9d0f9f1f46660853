/** Nothing that is printed for people is wider than the terminal, and no column of a table goes away without a word. */
import { describe, expect, test } from "vitest";
import { textTable } from "../../packages/answers/src/text/table.js";
import { textWidth } from "../../packages/answers/src/text/text-width.js";
import { terminalWidth } from "../../packages/cli/src/present/terminal-width.js";
import { fc } from "../support/property.js";
import { present } from "../support/sweeps.js";
import { runCommand, runEach, splitArguments } from "./run-command.js";

const WIDTHS = [40, 60, 80, 120, 200];

const POLE = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const SLOPER = "sweeps/2026-03-14-heron-lock-sloper.s1p";
const AGAIN = "sweeps/2026-03-21-heron-lock-sloper-again.csv";
const SCALAR = "sweeps/2026-08-08-moorhen-wharf-poor-joint.csv";

const LINES = [
  `check ${POLE} ${SCALAR} --chart`,
  `check ${POLE} --plan us-part97 --class general --segments --at ft8,7.030 --modes cw,ssb,data --power 100 --tuner built-in --feedline rg-58 --feedline-length 12 --chart --ascii`,
  `check ${SLOPER} --station stations/every-field.json --at 7.030`,
  `diff ${SLOPER} ${POLE} --station stations/canal-boat.json --chart`,
  `diff --before ${SLOPER} ${AGAIN} --after ${POLE}`,
  "grade sweeps --best 20m --group-by counterpoise --over-time mooring",
  "grade --criteria",
  `trim ${POLE} --band 40m --wire-length 20 --feedline rg-58 --feedline-length 12`,
  `try ${POLE} --want 40m,20m --wire-length 20 --have coils --feedline rg-58 --feedline-length 12`,
  "line lines/2026-07-11-lantern-bridge-wet-feedline-short.s1p --end short --kind rg-58",
  `show ${POLE}`,
  "show sweeps/2026-02-21-tansy-reach-trimmed.txt",
  "heard reports",
  "plans",
  "plans us-part97 --class general",
  "plans --activity",
  "feedlines",
  "--help",
  "check --help",
  "log init --help",
];
/** What these print is a file, or nothing but where one was written. */
const NOT_FOR_PEOPLE = ["report", "page", "chart", "convert", "log", "station", "schema", "completion"];

/** A path, or another word that cannot be broken. */
const isOneWord = (line: string) => !line.trim().includes(" ");

const RUNS = LINES.flatMap((line) => WIDTHS.map((columns) => ({ line, columns, args: splitArguments(line) })));
const outcomes = runEach(RUNS);

for (const [i, { line, columns }] of RUNS.entries()) {
  test(`${line} fits ${columns} columns`, () => {
    const { stdout, exit } = present(outcomes[i], "outcome");
    expect(exit).toBe(0);
    expect(stdout.split("\n").filter((printed) => textWidth(printed) > columns && !isOneWord(printed))).toEqual([]);
  });
}

test("every command that prints for people is among them", () => {
  const all = [...runCommand(["--help"]).stdout.matchAll(/^ {2}([a-z]+) .*/gm)].map(([, name = ""]) => name);
  const known = [...LINES.map((line) => line.split(" ")[0]), ...NOT_FOR_PEOPLE, "feedpoint", "help"];
  expect(all.length).toBeGreaterThan(NOT_FOR_PEOPLE.length);
  expect(all.filter((name) => !known.includes(name))).toEqual([]);
});

describe("a table", () => {
  const word = fc.stringMatching(/^[a-z0-9]{1,8}$/);
  const words = fc.array(word, { minLength: 1, maxLength: 5 }).map((all) => all.join(" "));
  const table = fc.integer({ min: 1, max: 6 }).chain((count) =>
    fc.record({
      columns: fc.array(
        fc.record({ title: words, spare: fc.integer({ min: 0, max: 3 }), align: fc.constantFrom("left", "right") }),
        { minLength: count, maxLength: count },
      ),
      rows: fc.array(fc.array(words, { minLength: count, maxLength: count }), { minLength: 1, maxLength: 4 }),
    }),
  );

  test("names every column and keeps to the width, whatever it is", () => {
    fc.assert(
      fc.property(
        table,
        fc.integer({ min: 20, max: 160 }),
        fc.constantFrom("", "  "),
        ({ columns, rows }, width, indent) => {
          const text = textTable(columns, rows, { width, indent });
          expect(text.split("\n").filter((line) => textWidth(line) > width)).toEqual([]);
          const plain = text.replace(/\s+/g, " ");
          for (const { title } of columns) expect(plain).toContain(title);
        },
      ),
    );
  });

  const columns = [
    { title: "Band" },
    { title: "Best SWR" },
    { title: "Worst SWR", spare: 1 },
    { title: "loss", spare: 1 },
    { title: "Note", spare: 2 },
  ];
  const rows = [["40m", "1.20", "2.40", "0.3 dB", ""]];

  test("leaves out what can be spared, what belongs together at once, and says so", () => {
    expect(textTable(columns, rows, { width: 34 })).toBe(
      ["Band  Best SWR  Worst SWR  loss", "----  --------  ---------  ------"]
        .concat("40m   1.20      2.40       0.3 dB", "(no room here for: Note)")
        .join("\n"),
    );
    expect(textTable(columns, rows, { width: 30 })).toBe(
      ["Band  Best SWR", "----  --------", "40m   1.20", "(no room here for: Worst SWR,", "  loss, Note)"].join("\n"),
    );
  });

  test("becomes blocks, with all that is in it, where even the rest is too wide", () => {
    expect(textTable(columns, [...rows, ["160m", "9.99", "∞", "–", "none"]], { width: 13 })).toBe(
      ["Band: 40m", "  Best SWR:", "    1.20", "  Worst SWR:", "    2.40", "  loss: 0.3", "    dB"]
        .concat("Band: 160m", "  Best SWR:", "    9.99", "  Worst SWR:", "    ∞", "  loss: –", "  Note: none")
        .join("\n"),
    );
  });
});

describe("the width", () => {
  test("is what COLUMNS wishes, else that of the terminal, else what is usual", () => {
    expect(terminalWidth({ COLUMNS: "72" }, { columns: 100 }, 120)).toBe(72);
    expect(terminalWidth({}, { columns: 100 }, 120)).toBe(100);
    expect(terminalWidth({}, {}, 120)).toBe(120);
  });

  test("is not what is no number of columns, nor beyond what can be read", () => {
    for (const COLUMNS of ["", "0", "-5", "80x", "wide"]) expect(terminalWidth({ COLUMNS }, {}, 120)).toBe(120);
    expect(terminalWidth({ COLUMNS: "100000" }, {}, 120)).toBe(160);
    expect(terminalWidth({ COLUMNS: "1" }, {}, 120)).toBe(20);
  });
});
