import { at, type Column } from "../column.js";
import { type Finding, finding } from "../finding.js";
import { quote, ReadError } from "../read-error.js";
import type { NumberColumn } from "./assemble.js";
import type { Quantity } from "./columns.js";

const SIZES: readonly Quantity[] = ["swr", "return-loss", "s11-db", "reflection-magnitude", "reflected-power"];

/**
 * Settles what a column means from its neighbours and its values: gives angles and parts without a subject theirs, turns
 * a misnamed return loss round, takes an unsigned reactance for what it is.
 *
 * @throws ReadError `ambiguous` where two columns hold the same
 */
export function settleColumns(
  columns: readonly NumberColumn[],
  frequencyHz: Column,
  signedReactance: boolean,
  file: string,
  findings: Finding[],
): readonly NumberColumn[] {
  const has = (quantity: Quantity) => columns.some((column) => column.quantity === quantity);
  const subject = has("impedance-magnitude") && !SIZES.some(has) ? "impedance" : "reflection";
  const settled = columns.map((column): NumberColumn => {
    const { quantity, values, name } = column;
    if (quantity === "angle") return { ...column, quantity: `${subject}-angle` };
    if (quantity === "real") return { ...column, quantity: "reflection-real" };
    if (quantity === "imaginary") return { ...column, quantity: "reflection-imaginary" };
    if (quantity === "return-loss" && sign(values) < 0) {
      findings.push(
        finding("info", "return-loss-negative", `${quote(name)} is negative, so it was read as S11 in dB.`),
      );
      return { ...column, quantity: "s11-db" };
    }
    if (quantity === "s11-db" && sign(values) > 0) {
      findings.push(finding("caution", "s11-positive", `${quote(name)} is positive, so it was read as return loss.`));
      return { ...column, quantity: "return-loss" };
    }
    if (quantity === "reactance" && !signedReactance && looksUnsigned(values, frequencyHz)) {
      findings.push(
        finding(
          "caution",
          "reactance-without-sign",
          `${quote(name)} is nowhere negative, so its sign seems to be missing; only the size of the reflection was used. Say --signed-reactance if the sign is right.`,
        ),
      );
      return { ...column, quantity: "reactance-magnitude" };
    }
    return column;
  });
  refuseDuplicates(settled, file);
  return settled;
}

/** Negative where practically all values are below zero, positive where practically all are above. */
function sign(values: Column): number {
  let below = 0;
  let above = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value < 0) below++;
    else if (value > 0) above++;
  }
  if (below > 0.9 * (below + above)) return -1;
  return above > 0.9 * (below + above) ? 1 : 0;
}

/** Whether a column that should carry signs has lost them: nowhere negative over a wide range, or down to zero and up again. */
function looksUnsigned(values: Column, frequencyHz: Column): boolean {
  let least = Number.POSITIVE_INFINITY;
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    const value = at(values, i);
    if (value < 0) return false;
    if (value < least) least = value;
    if (value > greatest) greatest = value;
  }
  const first = at(frequencyHz, 0);
  const last = at(frequencyHz, frequencyHz.length - 1);
  const isWide = Math.abs(last - first) > 0.1 * Math.max(first, last);
  return greatest > 0 && values.length >= 3 && (isWide || least < 0.1 * greatest);
}

function refuseDuplicates(columns: readonly NumberColumn[], file: string): void {
  for (const column of columns) {
    if (column.quantity === "transmission") continue;
    const twin = columns.find((other) => other !== column && other.quantity === column.quantity);
    if (twin === undefined) continue;
    throw new ReadError({
      code: "ambiguous",
      file,
      found: `${quote(column.name)} and ${quote(twin.name)} both hold ${column.quantity.replaceAll("-", " ")}`,
      remedy: 'Name all columns with --columns, "skip" for those to leave out.',
    });
  }
}
