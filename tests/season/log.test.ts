import { readFileSync } from "node:fs";
import { dateOf, logFindings, ReadError, readDeploymentLog, rowFinder, timeOf } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { graded } from "../support/graded.js";

const logOf = (text: string | Uint8Array) =>
  readDeploymentLog(typeof text === "string" ? new TextEncoder().encode(text) : text, "deployments.csv");

/** What the log says of a file under `shape`; null where it has no row for it. */
const shapeOf = (text: string | Uint8Array, path: string) => rowFinder(logOf(text))(path)?.shape ?? null;

describe("a deployment log", () => {
  test.each([
    ["commas", "file,shape\na.s1p,vee\n"],
    ["semicolons and CRLF", "file;shape\r\na.s1p;vee\r\n"],
    ["tabs", "file\tshape\na.s1p\tvee"],
    ["a byte-order mark", "\uFEFFfile,shape\na.s1p,vee\n"],
    ["quotes", '"file","shape"\n"a.s1p","vee"\n'],
    ["blanks around the cells", "file , shape\n a.s1p , vee \n"],
    ["empty lines and a shorter row", "\nfile,shape\n\nb.s1p\n,,\na.s1p,vee\n"],
    ["another name for the column of files", "note,Sweep,shape\n,a.s1p,vee\n"],
    ["a column twice: the first counts", "file,shape,shape\na.s1p,vee,sloper\n"],
    ["an apostrophe against formulas", "file,shape\n'a.s1p,no\na.s1p,vee\n"],
  ])("with %s", (_, text) => {
    expect(shapeOf(text, "sweeps/a.s1p")).toBe("vee");
  });

  test("in Latin-1", () => {
    const bytes = Uint8Array.from("file,shape\nbr\u00FCcke.s1p,h\u00F6her\n", (character) => character.charCodeAt(0));
    expect(shapeOf(bytes, "brücke.s1p")).toBe("höher");
  });

  test("with quotes, delimiters and line ends in a cell", () => {
    expect(shapeOf('file,shape\na.s1p,"vee, ""flat""\nand low"\n', "a.s1p")).toBe('vee, "flat"\nand low');
  });

  test.each(["name,shape\na.s1p,vee\n", "", "a.s1p\n", "\u0000\u0001\u0002\u0003"])("is refused as %j", (text) => {
    expect(() => logOf(text)).toThrow(ReadError);
    expect(() => logOf(text)).toThrow("--no-log");
  });

  test("takes __proto__ for a word like any other", () => {
    const row = rowFinder(logOf("file,__proto__,constructor\na.s1p,__proto__,x\n"))("a.s1p");
    expect(Object.entries(row ?? {})).toEqual([
      ["file", "a.s1p"],
      ["__proto__", "__proto__"],
      ["constructor", "x"],
    ]);
  });

  test("of 10,000 rows is searched by name", () => {
    const rows = Array.from({ length: 10_000 }, (_, i) => `${i}.s1p,shape ${i}`);
    const find = rowFinder(logOf(["file,shape", ...rows].join("\n")));
    expect(find("9999.s1p")?.shape).toBe("shape 9999");
    expect(find("10000.s1p")).toBeNull();
  });
});

describe("a row of the log", () => {
  const text = "file,shape\nx.s1p,any\nz/x.s1p,in z\n./a\\x.s1p,in a\n";
  test.each([
    ["x.s1p", "any"],
    ["sweeps/x.s1p", "any"],
    ["sweeps/z/x.s1p", "in z"],
    ["sweeps\\a\\x.s1p", "in a"],
    ["sweeps/yz/x.s1p", "any"],
    ["sweeps/ax.s1p", null],
  ])("is found for %s", (path, shape) => {
    expect(shapeOf(text, path)).toBe(shape);
  });

  test("is found however the name's accents are coded, and as log init writes what must be defused", () => {
    expect(shapeOf("file,shape\ne\u0301te\u0301.s1p,vee\n", "été.s1p")).toBe("vee");
    expect(shapeOf("file,shape\n'=x.s1p,vee\n", "=x.s1p")).toBe("vee");
    expect(shapeOf("file,shape\nnew·line.s1p,vee\n", "new\nline.s1p")).toBe("vee");
  });

  test("that matches nothing, files without a row and dates in other forms are named", () => {
    const log = logOf("file,date\na.s1p,2026-05-02\nb.s1p,2.5.2026\n,2026-02-30\n");
    const messages = logFindings(log, ["s/a.s1p", "s/c.s1p"]).map(({ code, message }) => [code, message]);
    expect(messages).toEqual([
      ["log-row-missing", "The log has no row for c.s1p."],
      ["log-row-unmatched", "Rows of the log that no sweep here goes by: b.s1p, (no file named)."],
      ["log-date-unread", expect.stringContaining(": 2.5.2026, 2026-02-30.")],
    ]);
    expect(logFindings(logOf("file\na.s1p\n"), ["a.s1p"])).toEqual([]);
  });

  test("that stands in the log twice is named as that, and the first row counts", () => {
    const log = logOf("file,shape\na.s1p,vee\na.s1p,sloper\n");
    expect(logFindings(log, ["s/a.s1p"]).map(({ code, message }) => [code, message])).toEqual([
      ["log-row-repeated", "In the log twice, of which the first row counts: a.s1p."],
    ]);
    expect(rowFinder(log)("s/a.s1p")?.shape).toBe("vee");
  });

  test("whose row several files go by is told", () => {
    const log = logOf("file,shape\na.s1p,vee\nmay/b.s1p,sloper\n");
    const files = ["x/a.s1p", "y/a.s1p", "x/may/b.s1p"];
    expect(logFindings(log, files).map(({ code, message }) => [code, message])).toEqual([
      ["log-row-shared", expect.stringContaining("write more of their path into it: a.s1p (2 files).")],
    ]);
  });

  test.each([
    ["a quote that is not closed", 'file,shape\na.s1p,"vee\nb.s1p,sloper\n', "a quote is not closed"],
    ["a cell too many", "file,shape\na.s1p,vee,low\n", "more cells than there are columns"],
    ["a name twice", "file,shape,shape\na.s1p,vee,low\n", "two columns have one name"],
  ])("with %s is told to be no table", (_, text, slip) => {
    const found = logFindings(logOf(text), ["a.s1p"]).find(({ code }) => code === "log-slip");
    expect(found?.message).toContain(slip);
  });

  test.each(["file,shape\na.s1p\n", "file,shape,\na.s1p,vee,\n", "file,shape\na.s1p,vee,,\n"])(
    "is a table all the same: %j",
    (text) => {
      expect(logFindings(logOf(text), ["a.s1p"])).toEqual([]);
    },
  );
});

describe("a date", () => {
  test.each([
    ["2026-05-02", Date.UTC(2026, 4, 2)],
    ["2024-02-29", Date.UTC(2024, 1, 29)],
    ["2026-05-02 14:30", Date.UTC(2026, 4, 2, 14, 30)],
    ["2026-05-02T14:30:59", Date.UTC(2026, 4, 2, 14, 30, 59)],
  ])("%s", (date, time) => {
    expect(timeOf(date)).toBe(time);
  });

  test.each(["", "2026-02-30", "2026-13-01", "2026-00-10", "2026-05-02 24:30", "2.5.2026", "05/02/2026", "2026-5-2"])(
    "%j is none",
    (date) => {
      expect(timeOf(date)).toBeNull();
    },
  );

  test("of the log goes before the file's own, unless it cannot be read", () => {
    const of = (stated: string) => dateOf(graded("a.s1p", { takenAt: "2026-01-01", log: { Date: stated } }));
    expect(of("2026-05-02")).toBe("2026-05-02");
    expect(of("2.5.2026")).toBe("2026-01-01");
    expect(dateOf(graded("a.s1p"))).toBeNull();
  });
});

interface Making {
  readonly SWEEPS: readonly { readonly file: string }[];
  readonly CABIN_FEEDLINE: { readonly lengthM: number };
  deploymentLog(sweeps: Making["SWEEPS"], usualFeedlineM: number): string;
}

test("the log of the demo sweeps is what samples/making writes", async () => {
  const making = (name: string) => import(new URL(`../../samples/making/${name}.mjs`, import.meta.url).href);
  const { SWEEPS, CABIN_FEEDLINE }: Pick<Making, "SWEEPS" | "CABIN_FEEDLINE"> = await making("deployments");
  const { deploymentLog }: Pick<Making, "deploymentLog"> = await making("deployment-log");
  const committed = readFileSync(new URL("../../samples/sweeps/deployments.csv", import.meta.url), "utf8");
  expect(deploymentLog(SWEEPS, CABIN_FEEDLINE.lengthM)).toBe(committed);
  const files = SWEEPS.map(({ file }) => file);
  expect(logFindings(logOf(committed), files)).toEqual([]);
});
