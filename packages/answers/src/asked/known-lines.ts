import {
  type Deployment,
  type DeploymentLog,
  FEEDLINE_KINDS,
  type Feedline,
  feedlineFrom,
  type KnownLines,
} from "@feedpoint/core";
import { deploymentRowFinder } from "./deployments.js";
import { UsageError } from "./usage-error.js";

/** Swept at the antenna itself. */
export const NO_LINE: Feedline = {
  title: "no line",
  lengthM: 0,
  characteristicOhms: 50,
  velocityFactor: 1,
  loss: { k0: 0, k1: 0, k2: 0 },
  lossIs: "stated",
  ratedVolts: null,
  ratedAmperes: null,
};

/** The column of the log that tells the line of a deployment. */
const FEEDLINE = "feedline";

interface Stated {
  readonly beforeFeedline?: Feedline;
  readonly afterFeedline?: Feedline;
}

/** The lines as the options state them; null where they do not. @throws UsageError for one without the other */
export function statedLines({ beforeFeedline, afterFeedline }: Stated): KnownLines | null {
  if (beforeFeedline === undefined && afterFeedline === undefined) return null;
  if (beforeFeedline === undefined || afterFeedline === undefined) {
    throw new UsageError("Say both lines: --before-feedline rg-58:12 --after-feedline rg-213:25");
  }
  return { before: [beforeFeedline], after: [afterFeedline] };
}

/**
 * The lines that the log tells of both sides, where it tells that of each deployment and the two sides differ: what was swept
 * through one line is compared as it was swept.
 *
 * @param usual the station's line, whose kind a row that states nothing but a length has; null where none is stated
 */
export function loggedLines(
  log: DeploymentLog | null,
  sides: { readonly before: readonly Deployment[]; readonly after: readonly Deployment[] },
  usual: Feedline | null,
): KnownLines | null {
  const column = log?.columns.find((name) => name.toLowerCase() === FEEDLINE);
  if (column === undefined) return null;
  const rowOf = deploymentRowFinder(log);
  const linesOf = (deployments: readonly Deployment[]) =>
    deployments.map((deployment) => lineIn(rowOf(deployment)?.[column] ?? "", usual));
  const [before, after] = [linesOf(sides.before), linesOf(sides.after)];
  const isKnown = (line: Feedline | null): line is Feedline => line !== null;
  if (!before.every(isKnown) || !after.every(isKnown)) return null;
  const kinds = new Set([...before, ...after].map(({ title, lengthM }) => `${title} ${lengthM}`));
  return kinds.size > 1 ? { before, after } : null;
}

/** The line of one deployment: that of the log's row goes before the usual one. @param usual as of {@link loggedLines} */
export function deploymentLine(
  log: DeploymentLog | null,
  row: Readonly<Record<string, string>> | null,
  usual: Feedline | null,
): Feedline | null {
  const column = log?.columns.find((name) => name.toLowerCase() === FEEDLINE);
  return (column === undefined ? null : lineIn(row?.[column] ?? "", usual)) ?? usual;
}

const plain = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, "");

/** The line that a cell of the log tells: "rg-58:12", "12 m of RG58", "none"; null where it does not tell its kind and length. */
function lineIn(text: string, usual: Feedline | null): Feedline | null {
  if (/^\s*(?:none|no)\s*$/i.test(text)) return NO_LINE;
  const length = /(?::\s*|(?<![\d.,-]))(\d+(?:[.,]\d+)?)\s*(?:m\b|$)/i.exec(text);
  if (length === null) return null;
  const lengthM = Number((length[1] ?? "").replace(",", "."));
  const rest = plain(text.slice(0, length.index) + text.slice(length.index + length[0].length));
  const kinds = FEEDLINE_KINDS.map(({ id }) => id).filter((id) => rest.includes(plain(id)));
  const kind = kinds.sort((a, b) => b.length - a.length)[0];
  if (kind !== undefined) return feedlineFrom({ kind, lengthM });
  return rest === "" && usual !== null ? { ...usual, lengthM } : null;
}
