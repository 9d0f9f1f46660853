/** What holds of the library as a package: it stands on its own feet, and its public surface does not change unseen. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import vm from "node:vm";
import * as core from "@feedpoint/core";
import * as forCommand from "@feedpoint/core/for-command";
import * as schema from "@feedpoint/core/schema";
import { build } from "esbuild";
import { expect, test } from "vitest";

const source = fileURLToPath(new URL("../../packages/core/src/", import.meta.url));

function sourceFiles(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? sourceFiles(path) : /\.ts$/.test(entry.name) ? [path] : [];
  });
}

/** Examples in docstrings import the package by its name. */
const withoutDocstrings = (text: string): string => text.replaceAll(/\/\*\*[\s\S]*?\*\//g, "");

test("imports nothing but its dependencies and itself", () => {
  const { dependencies } = JSON.parse(readFileSync(join(source, "../package.json"), "utf8")) as {
    dependencies: Record<string, string>;
  };
  const foreign = sourceFiles(source).flatMap((file) =>
    [...withoutDocstrings(readFileSync(file, "utf8")).matchAll(/(?:from|import) "([^"]+)"/g)]
      .map(([, name = ""]) => name)
      .filter((name) => !name.startsWith(".") && !(name in dependencies))
      .map((name) => `${file}: ${name}`),
  );
  expect(foreign).toEqual([]);
});

test("runs where there is no Node: bundled for a browser, with nothing but the language around it", async () => {
  const { outputFiles } = await build({
    stdin: {
      contents: `import { check, planById, readSweeps } from "@feedpoint/core";
        const [sweep] = readSweeps("# MHz S RI R 50\\n7.0 0.5 0\\n7.1 0.1 0\\n7.2 0.5 0\\n");
        globalThis.result = check(sweep, { plan: planById("itu-r1"), bands: ["40m"] }).bands[0].best.frequencyHz;`,
      resolveDir: fileURLToPath(new URL("../", import.meta.url)),
    },
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    logLevel: "error",
  });
  // The two are all beyond the language that the library uses; every browser has them.
  const context = vm.createContext({ TextDecoder, TextEncoder, result: null });
  vm.runInContext(outputFiles[0]?.text ?? "", context);
  expect(context.result).toBeCloseTo(7.1e6, -3);
});

test("the public surface is this", () => {
  expect(Object.keys(core).toSorted().join(" ")).toMatchInlineSnapshot(
    `"ACTIVITIES ACTIVITY_SOURCES CAUTIONS COMMON_PLAN_ID DEFAULT_LIMITS DEFAULT_SCATTER DEFAULT_THRESHOLDS EXPOSURE_RULES FEEDLINE_KINDS FEWEST_FOR_JUMPS FINDING_CODES FIXED_PARTS GRADE_CRITERIA HIGH_VOLTAGE_CAUTIONS LEAST_ARRIVING LEAST_SWEPT_FRACTION MODE_NAMES RADIO_OHMS ReadError SECTORS USUAL_CAPACITOR_Q USUAL_COIL_Q activitiesFor admittanceFromImpedance advise antennaEndAt bearingDeg cautionsFor changeFindings changeReference changesOverTime check criteriaWith curveOf dateOf delimitedText deliveredFraction deploymentOf dialOf diff distanceKm driftFindings driftsOf emissionsIn eventsOf exposureDistance exposureLimits extremesBetween factorEffects feedlineFrom feedlineKindById forRadio gradeSweep greatestBandwidth greatestPowerAt greatestPowersIn greatestStress groupFindings groupGrades hasProblem headlineSentences heard heardBeside impedanceFromReflection instrumentError isDip isExempt isPowerUnconfirmed lNetworks leastMagnitude lineLedger locatorArea logFindings logNotRead lossBound lossChange lossFindings lossOverTime magnitudeAtLoad matchedLossDb measureLine mismatchLossDb modeOf needFor occupiedBy onAirOf onSameTerms parseColumnRoles partText placed planById planCertainty planIdNamed planIds planInfo privilegeFor quarterWaveBandwidth quarterWaveOhms rankFor rankForTonight readCompanions readDeploymentLog readReports readSweeps reducedPower referredTo reflectedPowerFraction reflectionAt reflectionAtInput reflectionAtLoad reflectionFromAdmittance reflectionFromImpedance reflectionMagnitudeAt reflectionMagnitudeFromReturnLoss reflectionMagnitudeFromSwr returnLossDb rowFinder sampleImpedance sampleReflection scalarSweep sectionAt seriesSections spansWithin stubsAcross stubsInSeries sweepAtAnalyser sweepAtAntenna sweepInfo swrFromReflectionMagnitude throughLine timeOf totalLossDb touchstoneText traceOf traceOfSweep trim usableBands vectorSweep wishAtActivity wishBetween wishInMode wishesOf withReference"`,
  );
  expect(Object.keys(schema).toSorted().join(" ")).toMatchInlineSnapshot(
    `"activitySchema bandPlanSchema jsonSchemaOf parseBandPlan parseStation stationSchema"`,
  );
  expect(Object.keys(forCommand).toSorted().join(" ")).toMatchInlineSnapshot(
    `"LOG_FILE drawnSweep grouped lookUp printableText suggestion"`,
  );
});
