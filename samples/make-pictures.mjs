/** Draws the pictures of the README from a demo sweep. Run after the build; the tests hold the pictures to it. */
import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";

const command = fileURLToPath(new URL("../packages/cli/dist/feedpoint.js", import.meta.url));
const folder = fileURLToPath(new URL(".", import.meta.url));

const SWEEP = "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p";
const NOTE = "Invented demo data, computed from a model, not a measurement.";
const BANDS = ["--plan", "itu-r1", "--bands", "40m,20m,15m,10m", "--no-station"];

mkdirSync(`${folder}pictures`, { recursive: true });
for (const what of ["swr", "smith"]) {
  const args = ["chart", SWEEP, ...BANDS, "--what", what, "--note", NOTE, "-o", `pictures/${what}.svg`, "--force"];
  const { status } = spawnSync(process.execPath, [command, ...args], { cwd: folder, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}
