import { type FindingKind, listed } from "./kind.js";

type OnBands = { readonly bands: readonly string[] };

/** What is told of reception reports. */
export const REPORT_FINDINGS = {
  "heard-outside": {
    meaning: "Reports of times at which no deployment was up by the log; they count for none.",
    words: ({ reports }: { reports: number }) =>
      `${reports} report${reports === 1 ? "" : "s"} of times at which the log has no deployment up, or has two or switches between them, ${reports === 1 ? "is" : "are"} left out.`,
  },
  "heard-without-ratio": {
    meaning: "Some reports hold no ratio of signal to noise in dB that can be read; they are counted and not compared.",
    words: ({ reports }: { reports: number }) =>
      `${reports} report${reports === 1 ? " has" : "s have"} no ratio of signal to noise in dB: an RST or nothing. They count, and are not compared.`,
  },
  "heard-powers-not-stated": {
    meaning: "The powers of some pairs are not known, so that a difference of power passes for one of the antennas.",
    words: ({ bands }: OnBands) =>
      `On ${listed(bands)} the power of some pairs is not stated: what the two were sent with counts as equal. A difference of power would pass for one of the antennas.`,
  },
  "heard-without-pairs": {
    meaning: "Two deployments were never heard by one receiver next to each other in time, and so are not compared.",
    words: ({ bands }: OnBands) =>
      `On ${listed(bands)} no receiver heard both in one mode, in dB and next to each other in time: different nights, hours or receivers are described and not compared. Switch between the two, A B B A, every few minutes.`,
  },
  "heard-one-deployment": {
    meaning: "All reports are of one deployment: they show where the listeners are, and no pattern of the antenna.",
    words: () => "Reports of one deployment show where the listeners are, not where the antenna radiates.",
  },
  "heard-no-others": {
    meaning:
      "There are no reports of other stations, so that only what a receiver heard of this one proves that it was listening.",
    words: () =>
      "There is no report of any other station: that a receiver was listening is known only where it heard one of the two. With the reports of others the silence of a receiver would tell more.",
  },
  "heard-absence": {
    meaning: "A report proves that something was radiated; that there is none proves nothing.",
    words: () => "A report proves that something was radiated; that there is none proves nothing.",
  },
} as const satisfies Readonly<Record<string, FindingKind>>;
