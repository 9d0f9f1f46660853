/** Draws the pictures of the README from demo sweeps. Run after the build; the tests hold the pictures to it. */
import { spawnSync } from "node:child_process";
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { PICTURES } from "./making/pictures.mjs";

const command = fileURLToPath(new URL("../packages/cli/dist/feedpoint.js", import.meta.url));
const folder = fileURLToPath(new URL(".", import.meta.url));

mkdirSync(`${folder}pictures`, { recursive: true });
for (const { name, args } of PICTURES) {
  const drawn = [command, ...args, "-o", `pictures/${name}.svg`, "--force"];
  const { status } = spawnSync(process.execPath, drawn, { cwd: folder, stdio: "inherit" });
  if (status !== 0) process.exit(status ?? 1);
}
