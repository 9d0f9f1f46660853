/**
 * Reads mutated sweep files for a long time: `pnpm fuzz [how many] [first seed]`. Ends with 1 at the first fault, whose seed
 * makes the same file again; tells the slowest file at the end.
 */
import { originals, type Trial, trial } from "./fuzz-reader.js";

const [count = 20_000, first = 1] = process.argv.slice(2).map(Number);
const files = originals(
  import.meta.url.includes("/dist/") ? new URL("../fuzz/", import.meta.url) : new URL(import.meta.url),
);
const outcomes = { read: 0, refused: 0, fault: 0 };
let slowest: Trial | null = null;
for (let seed = first; seed < first + count; seed++) {
  const result = trial(files, seed);
  outcomes[result.outcome]++;
  if (slowest === null || result.milliseconds > slowest.milliseconds) slowest = result;
  if (result.outcome === "fault") {
    console.error(`Seed ${seed} (${result.name}): ${result.fault}`);
    process.exitCode = 1;
    break;
  }
}
console.log(`${outcomes.read} read, ${outcomes.refused} refused, ${outcomes.fault} faults.`);
if (slowest !== null) console.log(`Slowest: seed ${slowest.seed}, ${slowest.milliseconds.toFixed(0)} ms.`);
