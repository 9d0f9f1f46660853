import type { BandGrade, SweepGrade } from "@feedpoint/core";

const BAND: BandGrade = {
  band: "40m",
  grade: "A",
  bestSwr: 1.2,
  bestHz: 7_100_000,
  isBestAtLeast: false,
  dipHz: 7_100_000,
  withinLimitFraction: 1,
  sweptFraction: 1,
  need: "none",
  notedUpToSwr: null,
  restsOn: "curve",
};

/** A graded sweep of one band, as much of it said as a test is about. */
export function graded(
  file: string,
  {
    log = null,
    takenAt = null,
    lossBoundDb = null,
    ...band
  }: Partial<BandGrade> & {
    readonly log?: SweepGrade["log"];
    readonly takenAt?: string | null;
    readonly lossBoundDb?: number | null;
  } = {},
): SweepGrade {
  return {
    sweep: {
      file,
      label: file,
      kind: "vector",
      description: "made up by a test",
      points: 101,
      startHz: 1e6,
      stopHz: 30e6,
      referenceOhms: 50,
      takenAt,
      findings: [],
    },
    grade: band.grade === undefined ? BAND.grade : band.grade,
    bands: [{ ...BAND, ...band }],
    lossBoundDb,
    returnLosses: [],
    lossBoundHz: null,
    lineLossAt10MHzDb: null,
    atAntenna: null,
    wishes: [],
    findings: [],
    log,
  };
}
