import { writeFileSync } from "node:fs";
import { COMPILED, loadProgram } from "./load-program.js";

/** Runs a command for the build, and keeps what of the program was compiled on the way. */
const { program, script } = loadProgram();
program.runProgram().then(() => writeFileSync(COMPILED, script.createCachedData()));
