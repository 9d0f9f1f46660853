import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { Script } from "node:vm";

/** The program in one file, and what V8 made of it when it was built (see build/command.mjs). */
const SOURCE = join(import.meta.dirname, "program.js");
export const COMPILED = join(import.meta.dirname, "program.compiled");

/** What is built from `program.ts`, and the script that holds it. */
interface LoadedProgram {
  readonly program: typeof import("../program.js");
  readonly script: Script;
}

/**
 * Loads the program as V8 compiled it once: a short command would spend more time on compiling than on its work. V8 refuses
 * what another version of it compiled, and compiles the source; nothing but the time differs.
 */
export function loadProgram(): LoadedProgram {
  // Each byte is a character: the build writes ASCII.
  const source = readFileSync(SOURCE, "latin1");
  const script = new Script(`(function (module, require, __dirname) {${source}\n})`, {
    filename: SOURCE,
    ...(existsSync(COMPILED) ? { cachedData: readFileSync(COMPILED) } : {}),
  });
  const module = { exports: {} };
  script.runInThisContext()(module, createRequire(SOURCE), import.meta.dirname);
  return { program: module.exports as LoadedProgram["program"], script };
}
