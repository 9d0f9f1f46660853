import { loadProgram } from "./load-program.js";

loadProgram("program").program.gradeInThread();
