import { demand, isRecord } from "../input/argument.js";

/**
 * Holds an argument to being a sweep, by its shape: whether its numbers keep the rules was settled when it was built.
 *
 * @throws TypeError for anything else, a list of sweeps included
 */
export function checkSweep(given: unknown, name = "sweep"): void {
  demand(!Array.isArray(given), name, "one sweep (readSweeps gives a list of them)", given);
  demand(isSweep(given), name, "a sweep, as readSweeps, vectorSweep or scalarSweep gives one", given);
}

/** The same for a sweep with phase. */
export function checkVectorSweep(given: unknown, name = "sweep"): void {
  checkSweep(given, name);
  const { kind } = given as { kind: unknown };
  demand(kind === "vector", `${name}.kind`, '"vector", a sweep with phase', kind);
}

function isSweep(given: unknown): boolean {
  if (!isRecord(given) || !isRecord(given.source) || !ArrayBuffer.isView(given.frequencyHz)) return false;
  const { frequencyHz, reflectionMagnitude, reflectionReal, reflectionImaginary } = given;
  const isColumn = (column: unknown) =>
    ArrayBuffer.isView(column) && column.byteLength === (frequencyHz as ArrayBufferView).byteLength;
  if (!isColumn(reflectionMagnitude)) return false;
  return (
    given.kind === "scalar" || (given.kind === "vector" && isColumn(reflectionReal) && isColumn(reflectionImaginary))
  );
}
