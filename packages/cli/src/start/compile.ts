import { writeFileSync } from "node:fs";
import { compiledOf, loadProgram, programFor } from "./load-program.js";

/** Runs a command for the build, and keeps what of its program was compiled on the way. */
const name = programFor(process.argv);
const { program, script } = loadProgram(name);
program.runProgram().then(() => writeFileSync(compiledOf(name), script.createCachedData()));
