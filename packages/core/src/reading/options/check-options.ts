import { demand, isFiniteAbove0, isRecord } from "../../input/argument.js";
import { DECIMAL_MARKS, DELIMITERS, type ReadOptions } from "./read-options.js";
import { UNIT_EXPONENTS } from "./units.js";

/**
 * Holds what the user says about a file to what it may be. What only the file can tell, such as whether it has the port that
 * is asked for, is left to the reader.
 *
 * @throws TypeError naming the option and what it takes
 */
export function checkReadOptions(options: ReadOptions): void {
  demand(isRecord(options), "options", 'an object such as { fileName: "garden.s1p" }', options);
  const { fileName, port, referenceOhms, delimiter, decimal, frequencyUnit, columns, signedReactance } = options;
  if (fileName !== undefined) demand(typeof fileName === "string", "fileName", "a text", fileName);
  if (port !== undefined) demand(typeof port === "number", "port", "a number from 1", port);
  if (referenceOhms !== undefined) {
    demand(isFiniteAbove0(referenceOhms), "referenceOhms", "a number of ohms above 0", referenceOhms);
  }
  checkChoice("delimiter", DELIMITERS, delimiter);
  checkChoice("decimal", DECIMAL_MARKS, decimal);
  checkChoice("frequencyUnit", Object.keys(UNIT_EXPONENTS), frequencyUnit);
  if (columns !== undefined) {
    const areRoles = Array.isArray(columns) && columns.every((role) => isRecord(role) && "quantity" in role);
    demand(
      areRoles,
      "columns",
      'a list of roles such as { quantity: "swr" }, which parseColumnRoles makes of a text',
      columns,
    );
  }
  if (signedReactance !== undefined) {
    demand(typeof signedReactance === "boolean", "signedReactance", "true or false", signedReactance);
  }
}

function checkChoice(name: string, choices: readonly string[], given: string | undefined): void {
  if (given === undefined) return;
  demand(choices.includes(given), name, `one of ${choices.map((choice) => `"${choice}"`).join(", ")}`, given);
}
