/** What the reading of a file says to a call that is wrong, and in which forms it takes a file's content. */
import { type ReadOptions, readCompanions, readDeploymentLog, readSweeps, type VectorSweep } from "@feedpoint/core";
import { describe, expect, test } from "vitest";

/** What a caller without types may pass where another type is asked for. */
const wrong = <Type>(value: unknown): Type => value as Type;

describe("a file's content", () => {
  const text = "# MHz S RI R 50\n7.0 0.5 0\n7.1 0.1 0\n7.2 0.5 0\n";
  const bytes = new TextEncoder().encode(text);
  /** The same bytes amid others, as they lie in a part of a buffer. */
  const amid = Uint8Array.from([1, 2, 3, ...bytes, 4]).subarray(3, 3 + bytes.length);

  test.each<[string, Uint8Array | ArrayBuffer | string]>([
    ["Uint8Array", bytes],
    ["Uint8Array on a part of a buffer", amid],
    ["ArrayBuffer", bytes.buffer as ArrayBuffer],
    ["Buffer", Buffer.from(text)],
    ["string", text],
    ["string with a byte-order mark", `\uFEFF${text}`],
  ])("is taken as %s", (_, content) => {
    const [read] = readSweeps(content) as [VectorSweep];
    expect(Array.from(read.frequencyHz)).toEqual([7.0e6, 7.1e6, 7.2e6]);
    expect(Array.from(read.reflectionReal)).toEqual([0.5, 0.1, 0.5]);
  });

  test("keeps characters of a text that are not ASCII", () => {
    expect(readSweeps(`! Kanal, 3 m über Wasser\n${text}`)[0].source.comments).toEqual(["Kanal, 3 m über Wasser"]);
  });

  test.each<[unknown, string]>([
    [undefined, "undefined"],
    [Array.from(bytes), "a list"],
    [Promise.resolve(bytes), "a promise, which must be awaited first"],
    [{ bytes }, "another object"],
  ])("is refused as %s", (content, said) => {
    const message = `bytes must be the bytes of a file (Uint8Array or ArrayBuffer) or its text, got ${said}`;
    expect(() => readSweeps(wrong<string>(content))).toThrow(new TypeError(message));
    expect(() => readDeploymentLog(wrong<string>(content), "log.csv")).toThrow(new TypeError(message));
  });

  test("of a log may be its text", () => {
    expect(readDeploymentLog("file,height\na.s1p,8 m\n", "log.csv").rows).toEqual([{ file: "a.s1p", height: "8 m" }]);
  });

  test("of companions is taken in the same ways", () => {
    const real = "Frequency (Hz),S11 real\n7000000,0.5\n7100000,0.1\n";
    const imaginary = "Frequency (Hz),S11 imaginary\n7000000,0\n7100000,0.2\n";
    const [read] = readCompanions([
      { bytes: real, fileName: "real.csv" },
      { bytes: new TextEncoder().encode(imaginary), fileName: "imaginary.csv" },
    ]);
    expect(read.kind).toBe("vector");
    expect(() => readCompanions([{ bytes: real, fileName: "real.csv" }])).toThrow(/^files must be a list of two files/);
    expect(() =>
      readCompanions([
        { bytes: real, fileName: "a" },
        { bytes: wrong<string>(7), fileName: "b" },
      ]),
    ).toThrow(/^files\[1\]\.bytes must be/);
  });
});

describe("what is said about a file", () => {
  test.each<[unknown, string]>([
    [{ frequencyUnit: "mhz" }, 'frequencyUnit must be one of "Hz", "kHz", "MHz", "GHz", got "mhz"'],
    [{ delimiter: ";" }, 'delimiter must be one of "tab", "semicolon", "comma", "space", "bar", got ";"'],
    [{ decimal: "." }, 'decimal must be one of "point", "comma", got "."'],
    [{ referenceOhms: 0 }, "referenceOhms must be a number of ohms above 0, got 0"],
    [{ port: "2" }, 'port must be a number from 1, got "2"'],
    [{ fileName: 7 }, "fileName must be a text, got 7"],
    [{ signedReactance: "yes" }, 'signedReactance must be true or false, got "yes"'],
    [
      { columns: "frequency,swr" },
      'columns must be a list of roles such as { quantity: "swr" }, which parseColumnRoles makes of a text, got "frequency,swr"',
    ],
    ["garden.s1p", 'options must be an object such as { fileName: "garden.s1p" }, got "garden.s1p"'],
  ])("%j is refused", (options, message) => {
    expect(() => readSweeps("7.1 1.5", wrong<ReadOptions>(options))).toThrow(new TypeError(message));
    expect(() => readCompanions([], wrong<ReadOptions>(options))).toThrow(new TypeError(message));
  });

  test("and left out, also as undefined, it is found in the file", () => {
    const nothing = wrong<ReadOptions>({ delimiter: undefined, frequencyUnit: undefined, columns: undefined });
    expect(readSweeps("# MHz S RI R 50\n7.1 0.1 0\n", nothing)).toHaveLength(1);
  });
});
