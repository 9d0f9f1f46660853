import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { Script } from "node:vm";

/** The programs that are built, each in one file: all commands, or the one that is called most. */
export type ProgramName = "program" | "check";

/** The program that a command line needs. */
export const programFor = ([, , command]: readonly string[]): ProgramName =>
  command === "check" ? "check" : "program";

/** Where V8 left what it made of a program when that was built (see build/command.mjs). */
export const compiledOf = (name: ProgramName): string => join(import.meta.dirname, `${name}.compiled`);

/**
 * Has V8 wait seven times as long before it optimises a function: one check ends before most of that has paid. Measured with the V8 of Node
 * 20; later ones go about it in another way. (Garbage collected in one thread would be faster still, but to say so at this late point ends
 * V8 in a fault where it had begun to mark.)
 */
function optimiseLate(): void {
  if (process.versions.v8.startsWith("11.")) setFlagsFromString("--interrupt-budget=1000000");
}

/** What each is built from. */
interface Programs {
  readonly program: typeof import("../program.js");
  readonly check: typeof import("../check-program.js");
}

/** What a program gives, and the script that holds it. */
interface LoadedProgram<Name extends ProgramName> {
  readonly program: Programs[Name];
  readonly script: Script;
}

/**
 * Loads a program as V8 compiled it once: a short command would spend more time on compiling than on its work. V8 refuses
 * what another version of it compiled, and compiles the source; nothing but the time differs.
 */
export function loadProgram<Name extends ProgramName>(name: Name): LoadedProgram<Name> {
  if (name === "check") optimiseLate();
  const file = join(import.meta.dirname, `${name}.js`);
  const compiled = compiledOf(name);
  // Each byte is a character: the build writes ASCII.
  const source = readFileSync(file, "latin1");
  const script = new Script(`(function (module, require, __dirname) {${source}\n})`, {
    filename: file,
    ...(existsSync(compiled) ? { cachedData: readFileSync(compiled) } : {}),
  });
  const module = { exports: {} };
  script.runInThisContext()(module, createRequire(file), import.meta.dirname);
  return { program: module.exports as Programs[Name], script };
}
