/** No finding is lost on the way: every code through every format that shows it. */
import {
  check,
  diff,
  FINDING_CODES,
  type Finding,
  type FindingCode,
  gradeSweep,
  planById,
  trim,
} from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { findingList } from "../../packages/answers/src/html/remarks.js";
import { checkCsv, checkMarkdown, checkText } from "../../packages/answers/src/text/check.js";
import { diffCsv, diffMarkdown, diffText } from "../../packages/answers/src/text/diff.js";
import { gradeCsv, gradeMarkdown, gradeText } from "../../packages/answers/src/text/grade.js";
import { jsonText } from "../../packages/answers/src/text/json.js";
import { trimCsv, trimMarkdown, trimText } from "../../packages/answers/src/text/trim.js";
import { findingText } from "../../packages/answers/src/words/remedies.js";
import { talkOf } from "../../packages/answers/src/words/severity.js";
import { finding } from "../../packages/core/src/sweep/finding.js";
import { FINDING_SAMPLES } from "../support/finding-samples.js";
import { evenly, reflectionOf, sweepOfReflections } from "../support/sweeps.js";

const plan = planById("itu-r1");
if (plan === null) throw new Error("no plan");
const options = { plan, bands: ["40m"] };
/** A series resonance of 40 Ω and Q 10 at 7.1 MHz. */
const axis = evenly(6.8e6, 7.4e6, 10e3);
const sweep = sweepOfReflections(
  axis,
  axis.map((hz) => reflectionOf([40, 400 * (hz / 7.1e6 - 7.1e6 / hz)])),
);
const codes = Object.keys(FINDING_CODES) as FindingCode[];

const sampleOf = <Code extends FindingCode>(code: Code): Finding<Code> =>
  finding("problem", code, FINDING_SAMPLES[code]);

/** Words as they stand in a format, without what it adds to break or escape them. */
const plain = (text: string) => text.replaceAll(/\\(?=[\\|<>`*_[\]])/g, "").replaceAll(/\s+/g, " ");

const unescaped = (markup: string) =>
  markup
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");

function expectWords(shown: string, found: Finding): void {
  expect(plain(shown)).toContain(plain(findingText(found)));
}

describe.each(codes)("%s", (code) => {
  const found = sampleOf(code);

  test("is seen in every format of check", () => {
    const result = { ...check(sweep, options), findings: [found] };
    const shown = { width: 100, withSegments: false, stationFile: null, tuner: "none" } as const;
    expectWords(checkText([result], shown), found);
    expectWords(checkMarkdown(result, "none"), found);
    expect(checkCsv([result])).toContain(code);
    expectWords(talkOf("sweep", [found]), found);
    expect(jsonText([result])).toContain(`"code": "${code}"`);
    expectWords(unescaped(findingList([found], "command").markup), found);
  });

  test("is seen in every format of diff", () => {
    const result = { ...diff(sweep, sweep, options), findings: [found] };
    expectWords(diffText(result, { width: 100, stationFile: null, chart: "" }), found);
    expectWords(diffMarkdown(result), found);
    expect(diffCsv([result])).toContain(code);
  });

  test("is seen in every format of trim", () => {
    const result = { ...trim(sweep, { ...options, band: "40m" }), findings: [found] };
    expectWords(trimText(result, { width: 100, stationFile: null }), found);
    expectWords(trimMarkdown(result), found);
    expect(trimCsv(result)).toContain(code);
  });

  test("is seen in the row of grade, below its table and in its CSV", () => {
    const graded = { ...gradeSweep(sweep, options), findings: [found] };
    const report = {
      schema: "feedpoint/grade@1" as const,
      plan: check(sweep, options).plan,
      limits: check(sweep, options).limits,
      criteria: [],
      sweeps: [graded],
      unreadable: [],
      groups: [],
      drifts: [],
      ranking: [],
      losses: [],
      changes: [],
      factors: [],
      tonight: [],
      onAir: [],
      findings: [],
      cautions: [],
      totals: { files: 1, graded: 1, unreadable: 0, points: 1 },
    };
    const season = {
      log: null,
      groupBy: null,
      overTime: null,
      factors: [],
      best: null,
      wishes: [],
      order: null,
      heard: null,
    };
    const text = gradeText(report, { width: 100, limits: report.limits, stationFile: null }, season);
    expect(text).toMatch(/ !! /);
    expectWords(text, { ...found, message: `${sweep.label}: ${found.message}` });
    expectWords(gradeMarkdown(report, season), { ...found, message: `${sweep.label}: ${found.message}` });
    expect(gradeCsv(report)).toContain(code);
  });
});
