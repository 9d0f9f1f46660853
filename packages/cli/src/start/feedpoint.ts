#!/usr/bin/env node
import { loadProgram, programFor } from "./load-program.js";

loadProgram(programFor(process.argv)).program.runProgram().then(leave);

/** Ends at once where all is written: Node would wait for what V8 still compiles. */
function leave(): void {
  const isWritten = process.stdout.writableLength === 0 && process.stderr.writableLength === 0;
  if (isWritten) process.exit();
}
