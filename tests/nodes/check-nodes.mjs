/**
 * Packs the command, installs it into an empty folder, and runs it on other versions of Node: run by `pnpm check:nodes`, which
 * fetches them from the registry of npm and so is no part of the tests. What they print is held against the Node that runs this.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { isDeepStrictEqual } from "node:util";

const VERSIONS = ["22.23.3", "24.21.0"];

const SAMPLE = fileURLToPath(
  new URL("../../samples/sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p", import.meta.url),
);
const RUNS = [["--version"], ["check", SAMPLE, "--plan", "itu-r1"], ["check", SAMPLE, "--json"]];

const place = mkdtempSync(join(tmpdir(), "feedpoint-nodes-"));
try {
  const command = installCommand(join(place, "command"));
  const wanted = RUNS.map((args) => outcome(process.execPath, command, args));
  for (const [i, { status, stdout }] of wanted.entries()) {
    if (status !== 0 || stdout === "") throw new Error(`Node ${process.version} fails at ${RUNS[i].join(" ")}.`);
  }
  for (const version of VERSIONS) {
    const node = installNode(version, join(place, version));
    for (const [i, args] of RUNS.entries()) compare(version, args, outcome(node, command, args), wanted[i]);
    console.log(`Node ${version} prints what ${process.version} prints.`);
  }
} finally {
  rmSync(place, { recursive: true });
}

/** Packs the command as it would be published, which builds it first, and returns what an empty folder then has of it. */
function installCommand(folder) {
  mkdirSync(folder);
  const cli = fileURLToPath(new URL("../../packages/cli/", import.meta.url));
  npm(cli, "pack", "--pack-destination", folder);
  const tarballs = readdirSync(folder).map((name) => `./${name}`);
  npm(folder, "init", "--yes");
  npm(folder, "install", ...tarballs);
  return join(folder, "node_modules", "feedpoint", "dist", "feedpoint.js");
}

/** Installs a version of Node, of which the registry has packages for Linux and Windows. */
function installNode(version, folder) {
  const name = `node-${process.platform === "win32" ? "win" : process.platform}-${process.arch}`;
  mkdirSync(folder);
  npm(folder, "init", "--yes");
  npm(folder, "install", `${name}@${version}`);
  const node = join(folder, "node_modules", name, "bin", process.platform === "win32" ? "node.exe" : "node");
  const told = execFileSync(node, ["--version"], { encoding: "utf8" }).trim();
  if (told !== `v${version}`) throw new Error(`${node} is ${told}.`);
  return node;
}

function npm(folder, ...args) {
  return execFileSync("npm", args, { cwd: folder, encoding: "utf8", stdio: ["ignore", "pipe", "inherit"] });
}

function outcome(node, command, args) {
  const { stdout, stderr, status } = spawnSync(node, [command, ...args], { encoding: "utf8" });
  return { stdout, stderr, status };
}

function compare(version, args, found, wanted) {
  if (isDeepStrictEqual(found, wanted)) return;
  console.error(`Node ${version}, ${args.join(" ")}:`, found, "\ninstead of:", wanted);
  process.exitCode = 1;
}
