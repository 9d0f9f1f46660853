/** What becomes of a measured difference once its causes are known, and how it is said. */
import { describe, expect, test } from "vitest";
import type { BandDiff } from "../../packages/core/src/jobs/diff/band-diff.js";
import type { Cause, CauseCode } from "../../packages/core/src/jobs/diff/cause.js";
import { headlineOf, headlineSentences } from "../../packages/core/src/jobs/diff/headline.js";
import { type DiffVerdict, explained, verdictOf } from "../../packages/core/src/jobs/diff/verdict.js";

const cause = (code: CauseCode, confidence: Cause["confidence"] = "likely"): Cause => ({
  code,
  confidence,
  evidence: {},
  message: code,
});
const better = { isBetter: true, isPerhaps: false, text: "better" };
const worse = { isBetter: false, isPerhaps: false, text: "worse" };

describe("the measured verdict", () => {
  test.each([
    [[better, null], better, "improved"],
    [[worse, worse], null, "worse"],
    [[better, worse], null, "mixed"],
    [[better, null], worse, "mixed"],
    [[null, null], null, "unchanged"],
  ] as const)("of %j and %j is %s", (points, fraction, verdict) => {
    expect(verdictOf(points, fraction).verdict).toBe(verdict);
  });
});

describe("perhaps", () => {
  const perhaps = { ...better, isPerhaps: true };
  const measured = verdictOf([perhaps, null], perhaps);

  test("holds where every sign may be scatter", () => {
    expect(measured).toMatchObject({ verdict: "improved", isPerhaps: true });
    expect(verdictOf([perhaps, better], perhaps).isPerhaps).toBe(false);
    expect(verdictOf([null, null], null).isPerhaps).toBe(false);
  });

  test("ends where a cause is surely something else than the same antenna put up again", () => {
    const moved = (frequencyPercent: number) => ({ ...cause("resonance-moved"), evidence: { frequencyPercent } });
    const stays = (...causes: readonly Cause[]) => explained(measured, causes).isPerhaps;
    expect([stays(), stays(cause("antenna-changed")), stays(moved(0.3))]).toEqual([true, true, true]);
    expect([stays(cause("coil-added")), stays(moved(-2))]).toEqual([false, false]);
    expect(explained(measured, [cause("loss-added", "possible")])).toMatchObject({ verdict: "mixed", isPerhaps: true });
    expect(explained(measured, [cause("loss-added")])).toMatchObject({ verdict: "worse", isPerhaps: false });
  });
});

describe("the causes make of it:", () => {
  const becomes = (measured: DiffVerdict, ...causes: readonly Cause[]) =>
    explained({ verdict: measured, why: "measured", isHidden: false, isPerhaps: false }, causes).verdict;

  test("a lower SWR through loss alone is worse, a higher one through less loss improved", () => {
    expect(becomes("improved", cause("loss-added"))).toBe("worse");
    expect(becomes("worse", cause("loss-removed"))).toBe("improved");
  });

  test("loss that is only possible leaves an improvement in doubt", () => {
    expect(becomes("improved", cause("loss-added", "possible"))).toBe("mixed");
    expect(becomes("worse", cause("loss-removed", "possible"))).toBe("mixed");
    expect(becomes("worse", cause("loss-added", "possible"))).toBe("worse");
  });

  test.each(["resonance-moved", "antenna-changed"] as const)("more loss and %s cannot be weighed", (code) => {
    expect(becomes("improved", cause(code), cause("loss-added"))).toBe("mixed");
    expect(becomes("worse", cause(code), cause("loss-removed"))).toBe("mixed");
    expect(becomes("improved", cause(code))).toBe("improved");
  });

  test("another place on the line or another reference is not comparable, whatever was measured", () => {
    for (const verdict of ["improved", "worse", "unchanged", "mixed"] as const) {
      expect(becomes(verdict, cause("line-length-changed"))).toBe("not-comparable");
      expect(becomes(verdict, cause("reference-changed"))).toBe("not-comparable");
      expect(becomes(verdict, cause("reference-changed", "possible"))).toBe(verdict);
    }
  });

  test("loss beside another length is said", () => {
    const causes = [cause("line-length-changed"), cause("loss-added")];
    expect(explained({ verdict: "improved", why: "", isHidden: false, isPerhaps: false }, causes).why).toMatch(
      /another place.*more is lost/,
    );
  });

  test("what is unchanged stays unchanged", () => {
    expect(becomes("unchanged", cause("loss-added"), cause("antenna-changed"))).toBe("unchanged");
  });
});

describe("the headline", () => {
  const band = (name: string, verdict: DiffVerdict, needs: readonly [string, string] = ["none", "none"]) =>
    ({ band: name, verdict, why: "why", before: { need: needs[0] }, after: { need: needs[1] } }) as BandDiff;

  const hidden = (name: string) => ({ ...band(name, "unchanged"), isHidden: true });

  test.each([
    [[], [], "The two sweeps have no band in common."],
    [[band("40m", "unchanged")], [], "No difference that matters on 40m."],
    [[band("40m", "not-comparable")], [cause("line-length-changed")], "The two cannot be compared as antennas: why."],
    [
      [band("40m", "improved", ["built-in-tuner", "none"]), band("20m", "worse"), band("15m", "unchanged")],
      [cause("antenna-changed")],
      "Better on 40m; worse on 20m; unchanged on 15m. To use all of 40m now takes no tuner instead of a built-in tuner. The antenna itself changed. More loss would lower the SWR as well, and these sweeps do not rule it out.",
    ],
    [
      [hidden("40m"), hidden("20m")],
      [],
      "Nothing can be told on 40m, 20m: the sweeps of one side differ too much among themselves.",
    ],
    [[band("40m", "worse"), hidden("20m")], [], "Worse on 40m; nothing can be told on 20m."],
    [[band("40m", "mixed")], [cause("antenna-changed", "possible")], "Neither clearly better nor worse on 40m."],
  ] as const)("of %j and %j", (bands, causes, headline) => {
    expect(headlineOf(bands, causes)).toBe(headline);
  });

  test.each([
    [0.4, "Worse on 40m. The whole curve moved in frequency, by no more than hanging the same wire up again does."],
    [-3, "Worse on 40m. The whole curve moved in frequency."],
  ])("of a curve that moved by %d %", (frequencyPercent, headline) => {
    const moved = { ...cause("resonance-moved"), evidence: { frequencyPercent } };
    expect(headlineOf([band("40m", "worse")], [moved])).toBe(headline);
  });

  test("is made of sentences, which may hold full stops of their own", () => {
    expect(
      headlineSentences([band("40m", "improved", ["built-in-tuner", "none"])], [cause("antenna-changed")]),
    ).toEqual([
      "Better on 40m.",
      "To use all of 40m now takes no tuner instead of a built-in tuner.",
      "The antenna itself changed.",
      "More loss would lower the SWR as well, and these sweeps do not rule it out.",
    ]);
    expect(headlineSentences([{ ...band("40m", "not-comparable"), why: "by dr. No" }], [])).toEqual([
      "The two cannot be compared as antennas: by dr. No.",
    ]);
  });
});
