/** ADIF: the syntax of the open specification, adif.org, 3.1.7; the records are made up. Call signs begin with Q, which is never issued. */
import { ReadError, readReports } from "@feedpoint/core";
import { describe, expect, test } from "vitest";
import { adifRecords } from "../../packages/core/src/reading/reports/adif.js";
import { bandAt, powersIn, reportTime, snrIn } from "../../packages/core/src/reading/reports/report-values.js";
import { seededUniform } from "../support/seeded-noise.js";

const ADI = `made by hand
<ADIF_VER:5>3.1.7 <EOH>
<CALL:5>Q0AAA <QSO_DATE:8>20260502 <TIME_ON:4>1422 <BAND:3>40m <FREQ:8>7.038600 <MODE:4>WSPR <RST_RCVD:3>-21 <TX_PWR:3>0.2
<GRIDSQUARE:4>JO22 <MY_GRIDSQUARE:6>IO91WM <DISTANCE:3>368 <ANT_AZ:2>71 <EOR>`;

const REPORT = {
  time: Date.UTC(2026, 4, 2, 14, 22),
  receiver: "Q0AAA",
  transmitterLocator: "IO91WM",
  receiverLocator: "JO22",
  band: "40m",
  mode: "WSPR",
  snrDb: -21,
  powerW: 0.2,
};

describe("ADI", () => {
  test("is read by the lengths of its fields", () => {
    expect(readReports(ADI).reports).toEqual([{ ...REPORT, transmitter: "OWN STATION" }]);
  });

  test("goes without a header, in any case, with types and anything between the fields", () => {
    const text = ADI.slice(ADI.indexOf("<CALL")).replaceAll("<CALL:5>", "junk <call:5:S>").replace("<EOR>", "<eor>");
    expect(readReports(text).reports).toHaveLength(1);
  });

  test("may have tags in its data, which the length counts", () => {
    const [record] = adifRecords("<COMMENT:11>a <EOR> < b<CALL:5>Q0AAA<EOR>");
    expect(record?.get("COMMENT")).toBe("a <EOR> < b");
    expect(record?.get("CALL")).toBe("Q0AAA");
  });

  test("counts characters, or the bytes of UTF-8, as its writer did", () => {
    for (const length of ["Łódź €".length, new TextEncoder().encode("Łódź €").length]) {
      const [record] = adifRecords(`<QTH:${length}>Łódź € <CALL:5>Q0AAA<EOR>`);
      expect(record?.get("QTH")).toBe("Łódź €");
      expect(record?.get("CALL")).toBe("Q0AAA");
    }
  });

  test("names what of it is no report", () => {
    const { reports, leftOut } = readReports(
      "<EOH><CALL:5>Q0AAA<EOR><QSO_DATE:8>20260502<TIME_ON:6>142230<EOR><QSO_DATE:8>20260502<TIME_ON:4>1422<CALL:5>Q0AAA<EOR>",
    );
    expect(reports).toEqual([]);
    expect(leftOut).toEqual([
      { place: 1, reason: "no-time" },
      { place: 2, reason: "no-station" },
      { place: 3, reason: "no-band" },
    ]);
  });

  test("an RST is a report without a ratio", () => {
    const cw = ADI.replace("<MODE:4>WSPR", "<MODE:2>CW").replace("<RST_RCVD:3>-21", "<RST_RCVD:3>599");
    expect(readReports(cw).reports[0]?.snrDb).toBeNull();
  });

  test("1,000 mutants are read or refused, and none falls over", () => {
    const random = seededUniform(28);
    for (let i = 0; i < 1000; i++) {
      const signs = [...ADI.repeat(2)];
      for (let k = 0; k < 1 + 8 * random(); k++) {
        const at = Math.floor(random() * signs.length);
        const what = random();
        if (what < 0.4) signs.splice(at, Math.floor(random() * 20));
        else signs.splice(at, what < 0.7 ? 1 : 0, "<>:0189é\n\0&"[Math.floor(random() * 11)] ?? "");
      }
      try {
        for (const { time, receiver } of readReports(signs.join("")).reports) {
          expect(Number.isFinite(time)).toBe(true);
          expect(receiver).not.toBe("");
        }
      } catch (error) {
        expect(error).toBeInstanceOf(ReadError);
      }
    }
  });
});

test("ADX says the same", () => {
  const text = `<?xml version="1.0" encoding="UTF-8"?>
<ADX><HEADER><ADIF_VER>3.1.7</ADIF_VER></HEADER>
 <RECORDS><RECORD><CALL>Q0AAA</CALL><QSO_DATE>20260502</QSO_DATE><TIME_ON>1422</TIME_ON><BAND>40m</BAND><MODE>WSPR</MODE>
 <RST_RCVD>-21</RST_RCVD><TX_PWR>0.2</TX_PWR><GRIDSQUARE>JO22</GRIDSQUARE><MY_GRIDSQUARE>IO91WM</MY_GRIDSQUARE>
 <STATION_CALLSIGN>Q0ZZZ</STATION_CALLSIGN><COMMENT>wet &lt;again&gt; &amp; cold &#233;</COMMENT></RECORD></RECORDS></ADX>`;
  expect(readReports(text).reports).toEqual([{ ...REPORT, transmitter: "Q0ZZZ" }]);
  expect(adifRecords(text)[0]?.get("COMMENT")).toBe("wet <again> & cold é");
  const sections = text.replace(
    "<COMMENT>",
    "<!-- <CALL>Q9ZZZ</CALL> --><NOTES><![CDATA[<CALL>Q8ZZZ</CALL>]]></NOTES><COMMENT>",
  );
  expect(adifRecords(sections)[0]?.get("CALL")).toBe("Q0AAA");
  expect(adifRecords(sections)[0]?.get("NOTES")).toBe("<CALL>Q8ZZZ</CALL>");
});

describe("a table", () => {
  test.each([
    "time,tx,rx,band,mode,snr,power,tx_grid,rx_grid\n2026-05-02 14:22,Q0ZZZ,Q0AAA,40m,WSPR,-21,0.2,IO91WM,JO22\n",
    "Date;UTC;Reporter;Call;Freq (MHz);Mode;SNR (dB);Power (W);Locator;RX locator\n2026-05-02;14:22;Q0AAA;Q0ZZZ;7.0386;WSPR;-21;0.2;IO91WM;JO22\n",
    "# heard tonight\nTimestamp\tReceiver\tTransmitter\tHz\tmode\tdB\tpower_dBm\ttxgrid\trxgrid\n2026-05-02T14:22:00Z\tq0aaa\tq0zzz\t7038600\twspr\t-21\t23\tIO91WM\tJO22\n",
  ])("has its columns in any order and under many names (%#)", (text) => {
    const [report] = readReports(text).reports;
    expect(report).toMatchObject({ ...REPORT, transmitter: "Q0ZZZ", powerW: expect.closeTo(0.2, 2) });
  });

  test("without a column for the station that was heard asks which it was", () => {
    const text = "time,rx,band,snr\n2026-05-02 14:22,Q0AAA,40m,-21\n";
    expect(() => readReports(text)).toThrow(/no column names the station that was heard/);
    expect(readReports(text, { transmitter: "Q0ZZZ" }).reports[0]?.transmitter).toBe("Q0ZZZ");
  });

  test("without a header is refused", () => {
    expect(() => readReports("2026-05-02 14:22,Q0AAA,40m,-21\n")).toThrow(ReadError);
  });

  test("names the lines that are no report", () => {
    const { reports, leftOut } = readReports(
      "time,tx,rx,band,snr\n2026-05-02 14:22,Q0ZZZ,Q0AAA,40m,-21\nlater,Q0ZZZ,Q0AAA,40m,-21\n2026-05-02 14:22,Q0ZZZ,,40m,-21\n\n2026-05-02 14:22,Q0ZZZ,Q0AAA,33m,-21\n",
    );
    expect(reports).toHaveLength(1);
    expect(leftOut).toEqual([
      { place: 3, reason: "no-time" },
      { place: 4, reason: "no-station" },
      { place: 6, reason: "no-band" },
    ]);
  });
});

test.each([
  ["2026-05-02 14:22", Date.UTC(2026, 4, 2, 14, 22)],
  ["20260502 1422", Date.UTC(2026, 4, 2, 14, 22)],
  ["260502 1422", Date.UTC(2026, 4, 2, 14, 22)],
  ["2026-05-02T14:22:07Z", Date.UTC(2026, 4, 2, 14, 22, 7)],
  ["2026-05-02 16:22 +02:00", Date.UTC(2026, 4, 2, 14, 22)],
  ["2026-05-02T09:52:00-0430", Date.UTC(2026, 4, 2, 14, 22)],
  ["1777731720", 1777731720000],
  ["2026-02-30 14:22", null],
  ["2026-05-02", null],
  ["2026-05-02 25:00", null],
])("%s is a time, or none", (text, time) => {
  expect(reportTime(text)).toBe(time);
});

test("frequencies are in MHz, kHz or Hz, whichever makes them one of a band", () => {
  expect(["7.0386", "7038.6", "7038600", "14,0956", "9.5"].map(bandAt)).toEqual(["40m", "40m", "40m", "20m", null]);
});

test("powers that could all be the beacon's dBm are, unless the column says watts", () => {
  expect(powersIn(["23", "30"], null)).toEqual([expect.closeTo(0.1995, 4), 1]);
  expect(powersIn(["23", "30"], "W")).toEqual([23, 30]);
  expect(powersIn(["5", "100"], null)).toEqual([5, 100]);
  expect(powersIn(["", "37 dBm", "200 mW"], null)).toEqual([null, expect.closeTo(5.012, 3), 0.2]);
});

test("a ratio has a sign or a mode that gives ratios", () => {
  expect([snrIn("-15", "FT8"), snrIn("03", "FT8"), snrIn("59", "SSB"), snrIn("599", "CW"), snrIn("12", null)]).toEqual([
    -15,
    3,
    null,
    null,
    12,
  ]);
});
