import { existsSync } from "node:fs";
import type { Condition } from "@feedpoint/answers/asked/arguments";
import { type ReadDeployments, readGroups } from "@feedpoint/answers/asked/deployments";
import { loggedLines, statedLines } from "@feedpoint/answers/asked/known-lines";
import { UsageError } from "@feedpoint/answers/asked/usage-error";
import { diffCsv, diffMarkdown, diffText } from "@feedpoint/answers/text/diff";
import { printable } from "@feedpoint/answers/text/escape";
import { jsonText, ndjsonText } from "@feedpoint/answers/text/json";
import { comparedFindings } from "@feedpoint/answers/words/compared";
import { codesOf, problemsIn, talkOf } from "@feedpoint/answers/words/severity";
import { diffVerdictText } from "@feedpoint/answers/words/verdicts";
import {
  DEFAULT_THRESHOLDS,
  type Deployment,
  type DeploymentLog,
  type DiffOptions,
  type DiffResult,
  type DiffVerdict,
  diff,
  onSameTerms,
} from "@feedpoint/core";
import { Command } from "commander";
import { EXIT } from "../exit.js";
import { readReferred } from "../files.js";
import { isFolder, type Pairing, pairedByName } from "../find-files.js";
import { withOptions } from "../options/declare.js";
import { findLogs, groupsWhere, readLog } from "../options/log-file.js";
import type { OPTIONS, RawOptions } from "../options/options.js";
import { screenFrom } from "../options/screen.js";
import { type Settings, settingsFrom } from "../options/settings.js";
import { diffCharts } from "../present/chart/charts.js";
import { deploymentsFrom, onlyDeploymentFrom } from "../read-deployments.js";

type Requirement = (typeof OPTIONS.diffRequire.choices)[number];

const MEETS: Readonly<Record<Requirement, readonly DiffVerdict[]>> = {
  "no-worse": ["improved", "unchanged"],
  improved: ["improved"],
  unchanged: ["unchanged"],
  comparable: ["improved", "worse", "unchanged", "mixed"],
};

type RawDiffOptions = RawOptions<"diff">;

/** What is compared: one deployment on each side, or several repeats. */
interface Sides {
  readonly before: readonly Deployment[];
  readonly after: readonly Deployment[];
}

export function diffCommand(): Command {
  const command = new Command("diff")
    .description("Says what a change did: better, worse or no difference on each band, and the likely cause.")
    .argument("[before]", "sweep before the change, or a folder: one deployment, or several sweeps")
    .argument("[after]", "the same after it; sweeps of one range in two folders are compared in pairs by their names");
  return withOptions(command, "diff").action(runDiff);
}

async function runDiff(before: string | undefined, after: string | undefined, raw: RawDiffOptions): Promise<void> {
  const settings = await settingsFrom(raw);
  const screen = screenFrom(raw, settings);
  const lines = statedLines(raw);
  const log = lines === null ? logBeside(raw.log, [before, after, ...(raw.before ?? []), ...(raw.after ?? [])]) : null;
  const sidesOf = await sidesFrom(before, after, raw, settings);
  const compared = sidesOf.map((sides) => {
    const feedlines = lines ?? loggedLines(log, sides, settings.feedline);
    const options = { ...diffOptions(raw, settings), feedlines };
    return { sides, options, result: diff(sides.before, sides.after, options) };
  });
  const results = compared.map(({ result }) => result);
  const charts =
    screen === null
      ? []
      : compared.map(({ sides, options, result }) =>
          diffCharts(result, onSameTerms(sides.before, sides.after, options), screen),
        );
  process.stdout.write(`${render(results, charts, settings)}\n`);
  if (results.some(({ bands }) => bands.length === 0)) {
    process.exitCode = EXIT.input;
    return;
  }
  if (settings.format === "csv") {
    for (const result of results) process.stderr.write(talkOf(labelsOf(result), comparedFindings(result)));
  }
  if (raw.require === undefined) return;
  const problems = codesOf(results.flatMap((result) => problemsIn(comparedFindings(result))));
  if (problems !== "") {
    process.stderr.write(`feedpoint: required ${raw.require}; not to be told: ${problems}\n`);
    process.exitCode = EXIT.required;
    return;
  }
  const accepted = MEETS[raw.require];
  const missed = results
    .flatMap(({ bands }) => bands)
    .filter(
      (band) => band.isHidden || !accepted.includes(band.verdict) || (raw.require === "improved" && band.isPerhaps),
    );
  if (missed.length === 0) return;
  process.stderr.write(
    `feedpoint: required ${raw.require}; not so: ${missed.map((band) => `${band.band} ${band.isHidden || band.isPerhaps ? diffVerdictText(band) : band.verdict}`).join(", ")}\n`,
  );
  process.exitCode = EXIT.required;
}

/** What the log beside the sweeps knows of them; null where there is none. */
function logBeside(wanted: string | undefined, paths: readonly (string | undefined)[]): DeploymentLog | null {
  const named = paths.filter((path) => path !== undefined).flatMap((path) => path.split(","));
  const [file] = findLogs(wanted, named);
  return file === undefined ? null : readLog(file);
}

const labelsOf = ({ before, after }: DiffResult) => [...before, ...after].map(({ label }) => label).join(", ");

/** What is to be compared with what: two deployments, two groups of repeats, or the pairs of two folders. */
async function sidesFrom(
  before: string | undefined,
  after: string | undefined,
  raw: RawDiffOptions,
  settings: Settings,
): Promise<readonly Sides[]> {
  if (raw.beforeWhere !== undefined || raw.afterWhere !== undefined) return [await byLog(before, after, raw, settings)];
  if (raw.before !== undefined || raw.after !== undefined) {
    if (before !== undefined || raw.before === undefined || raw.after === undefined) {
      throw new UsageError("Say both --before and --after, and nothing else: diff --before a1 a2 --after b1 b2");
    }
    return [{ before: await repeatsIn(raw.before, settings), after: await repeatsIn(raw.after, settings) }];
  }
  if (before === undefined || after === undefined) {
    throw new UsageError("Name two sweeps: feedpoint diff before.s1p after.s1p (or --before and --after for repeats).");
  }
  if (!isFolder(before) && !isFolder(after)) {
    return [{ before: await deploymentNamed(before, settings), after: await deploymentNamed(after, settings) }];
  }
  const [first, second] = [await repeatsIn([before], settings), await repeatsIn([after], settings)];
  // Two folders that are a deployment each are compared as such; of many sweeps those of one name.
  if (first.length === 1 && second.length === 1) return [{ before: first, after: second }];
  const { pairs, alone } = isFolder(before) && isFolder(after) ? pairedByName(before, after) : NOTHING_PAIRED;
  if (pairs.length === 0) return [{ before: first, after: second }];
  if (alone.length > 0)
    process.stderr.write(`feedpoint: no namesake on the other side: ${printable(alone.join(", "))}\n`);
  return Promise.all(
    pairs.map(async ([one, other]) => ({
      before: await deploymentNamed(one, settings),
      after: await deploymentNamed(other, settings),
    })),
  );
}

const NOTHING_PAIRED: Pairing = { pairs: [], alone: [] };

/** A file, or several with commas between them that are one deployment. */
async function deploymentNamed(path: string, settings: Settings): Promise<readonly Deployment[]> {
  const parts = existsSync(path) ? [path] : path.split(",");
  return [await onlyDeploymentFrom(parts, settings, { together: parts.length > 1 })];
}

/** The sweeps of a folder that its deployment log tells apart. */
async function byLog(
  folder: string | undefined,
  after: string | undefined,
  raw: RawDiffOptions,
  settings: Settings,
): Promise<Sides> {
  const { beforeWhere, afterWhere } = raw;
  if (folder === undefined || !isFolder(folder) || after !== undefined || !beforeWhere || !afterWhere) {
    throw new UsageError(
      "Name one folder with a deployment log, and both sides: diff sweeps --before-where height=8m --after-where height=12m",
    );
  }
  const [file = null] = findLogs(raw.log, [folder]);
  if (file === null) throw new UsageError(`There is no deployment log in ${folder}; feedpoint log init writes one.`);
  const log = readLog(file);
  const read = async (condition: Condition) =>
    sideOf(readGroups(await groupsWhere(folder, log, condition), (path) => readReferred(path, settings)));
  return { before: await read(beforeWhere), after: await read(afterWhere) };
}

/** Deployments that are repeats of each other. */
const repeatsIn = async (paths: readonly string[], settings: Settings): Promise<readonly Deployment[]> =>
  sideOf(await deploymentsFrom(paths, settings, {}));

function sideOf({ deployments, unreadable }: ReadDeployments): readonly Deployment[] {
  if (unreadable[0] !== undefined) throw new UsageError(unreadable[0].reason);
  if (deployments.length === 0) throw new UsageError("One of the two sides holds no sweep files.");
  return deployments;
}

const diffOptions = (
  { samePlane, scatter, threshold, readingSwr }: RawDiffOptions,
  settings: Settings,
): DiffOptions => ({
  ...settings,
  isSamePlane: samePlane === true,
  ...(scatter === undefined ? {} : { scatter }),
  thresholds: {
    ...DEFAULT_THRESHOLDS,
    ...(threshold === undefined ? {} : { reflectionMagnitude: threshold }),
    ...(readingSwr === undefined ? {} : { readingSwr }),
  },
});

function render(results: readonly DiffResult[], charts: readonly string[], settings: Settings): string {
  switch (settings.format) {
    case "json":
      return jsonText(results);
    case "ndjson":
      return ndjsonText(results);
    case "csv":
      return diffCsv(results);
    case "markdown":
      return results.map(diffMarkdown).join("\n\n");
    case "table":
      return results.map((result, i) => diffText(result, { ...settings, chart: charts[i] ?? "" })).join("\n\n");
  }
}
