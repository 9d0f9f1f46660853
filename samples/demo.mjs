/** The main job on the demo sweeps: run by `pnpm demo` after the build. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const command = fileURLToPath(new URL("../packages/cli/dist/feedpoint.js", import.meta.url));
const folder = fileURLToPath(new URL(".", import.meta.url));

const runs = [
  ["check", "sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p", "--plan", "itu-r1", "--bands", "40m,20m,15m,10m"],
  [
    "diff",
    "sweeps/2026-02-21-tansy-reach-untrimmed.s1p",
    "sweeps/2026-02-21-tansy-reach-trimmed.txt",
    "--plan",
    "itu-r1",
  ],
  ["grade", "sweeps", "--plan", "itu-r1", "--bands", "40m,20m,15m,10m"],
  ["grade", "sweeps", "--plan", "itu-r1", "--bands", "20m", "--group-by", "counterpoise", "--best", "20m"],
];

process.stdout.write(
  "All sweeps below are invented: computed from a model, nothing was measured. They permit nothing.\n",
);
for (const args of runs) {
  process.stdout.write(`\n$ feedpoint ${args.join(" ")}\n\n`);
  const { status } = spawnSync(process.execPath, [command, ...args], { cwd: folder, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}
