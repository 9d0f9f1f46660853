#!/usr/bin/env node
import { loadProgram } from "./load-program.js";

loadProgram().program.runProgram();
