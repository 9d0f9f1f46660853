/**
 * What licences allow, asked of the command: powers and permissions of single classes on single frequencies.
 *
 * Sources: 47 CFR 97.301, 97.305, 97.313; Ofcom OFW611 schedule 1 (2024) and the exam reference EX309, in copies; AFuV Anlage 1
 * (BGBl. 2024 I Nr. 175); RBR-4 issue 3 (2022), quoted; Radiocommunications (Amateur Stations) Class Licence 2023, retyped; ARCEP
 * 2012-1241; Anatel Ato 926 (2024). Each plan names what of these was read.
 */
import { expect, test } from "vitest";
import { runEach } from "../cli/run-command.js";

const CASES: readonly (readonly [
  plan: string,
  licenceClass: string,
  mode: string,
  megahertz: string,
  allows: string,
])[] = [
  ["uk", "full", "ssb", "1.830", "1000 pep"],
  ["uk", "full", "ssb", "1.900", "32 pep"],
  ["uk", "intermediate", "ssb", "1.840", "100 pep"],
  ["uk", "intermediate", "ssb", "1.900", "32 pep"],
  ["uk", "foundation", "ssb", "1.900", "25 pep"],
  ["uk", "full", "ssb", "10.120", "400 pep"],
  ["uk", "full", "cw", "5.262", "200 eirp, 100 pep"],
  ["uk", "foundation", "cw", "5.262", "no"],
  ["uk", "full", "ssb", "50.5", "1000 pep"],
  ["uk", "full", "ssb", "51.5", "100 pep"],
  ["uk", "full", "ssb", "70.2", "160 pep"],
  ["uk", "full", "cw", "0.4755", "5 eirp"],
  ["united kingdom", "foundation", "ssb", "145.5", "25 pep"],
  ["germany", "A", "ssb", "7.150", "750 pep"],
  ["de", "A", "ssb", "5.3535", "9.14 erp"],
  ["de", "E", "ssb", "7.150", "no"],
  ["de", "E", "ssb", "1.860", "75 pep"],
  ["de", "A", "ssb", "1.950", "10 pep"],
  ["de", "N", "ssb", "28.5", "10 erp"],
  ["de", "A", "ssb", "10.120", "no"],
  ["ca", "honours", "ssb", "14.2", "560 pep"],
  ["ca", "honours", "cw", "14.05", "190 mean"],
  ["ca", "advanced", "ssb", "14.2", "2250 pep"],
  ["ca", "basic", "ssb", "14.2", "no"],
  ["ca", "honours", "ssb", "10.120", "no"],
  ["australia", "standard", "ssb", "50.5", "100 pep"],
  ["au", "standard", "cw", "52.5", "30 mean"],
  ["au", "standard", "ssb", "14.2", "100 pep"],
  ["au", "foundation", "ssb", "7.150", "10 pep"],
  ["au", "foundation", "fm", "7.150", "no"],
  ["au", "advanced", "ssb", "3.790", "400 pep"],
  ["france", "", "ssb", "28.5", "250 pep"],
  ["fr", "", "cw", "5.360", "15 eirp"],
  ["brazil", "C", "ssb", "14.2", "no"],
  ["br", "B", "ssb", "21.2", "1000 mean"],
  ["us", "technician", "ssb", "223.5", "1500 pep"],
  ["us", "novice", "ssb", "223.5", "25 pep"],
  ["us", "general", "data", "219.5", "50 pep"],
  ["us", "general", "ssb", "219.5", "no"],
  // 97.307(f)(1), from memory: FM of 16 kHz has a modulation index above 1.
  ["us", "general", "fm", "7.2", "no"],
  ["us", "technician", "fm", "28.4", "no"],
  ["us", "general", "fm", "29.6", "1500 pep"],
];

const outcomes = runEach(
  CASES.map(([plan, licenceClass, mode, at]) => ({
    args: [
      ...["check", "sweeps/2026-03-14-heron-lock-sloper.s1p", "--no-station", "--json", "--plan", plan],
      ...["--modes", mode, "--at", at, ...(licenceClass === "" ? [] : ["--class", licenceClass])],
    ],
  })),
);

interface Told {
  readonly dials: readonly { isPermitted: boolean; licenceLimits: readonly { watts: number; basis: string }[] }[];
}

test.each(CASES.map((row, i) => [...row, i] as const))(
  "%s %s %s on %s MHz: %s",
  (_plan, _class, _mode, _at, allows, i) => {
    const [dial] = (JSON.parse(outcomes[i]?.stdout ?? "") as Told).dials;
    const told = dial?.isPermitted
      ? dial.licenceLimits.map(({ watts, basis }) => `${watts} ${basis}`).join(", ")
      : "no";
    expect(told).toBe(allows);
  },
);
