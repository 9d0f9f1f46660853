#!/usr/bin/env node
import { loadProgram, programFor } from "./load-program.js";

loadProgram(programFor(process.argv)).program.runProgram();
