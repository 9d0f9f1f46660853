/** How the command starts: with what V8 compiled when it was built, and as well without. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { copyCommand, runEach } from "./run-command.js";

const folder = mkdtempSync(join(tmpdir(), "feedpoint-start-"));
afterAll(() => rmSync(folder, { recursive: true }));

const sweep = fileURLToPath(new URL("../../samples/sweeps/2026-05-02-lantern-bridge-bridge-pole.s1p", import.meta.url));
const command = copyCommand(folder);
const compiled = join(folder, "dist", "check.compiled");

/** Loaded before the command: says at the end whether V8 refused what was compiled before. */
const spy = join(folder, "spy.cjs");
writeFileSync(
  spy,
  `const vm = require("node:vm");
  const { Script } = vm;
  vm.Script = class extends Script {
    constructor(...given) {
      super(...given);
      process.on("exit", () => console.error(this.cachedDataRejected));
    }
  };`,
);

function check() {
  const args = ["--require", spy, command, "check", sweep];
  const { stdout, stderr, status } = spawnSync(process.execPath, args, { encoding: "utf8" });
  expect(status).toBe(0);
  return { stdout, wasRefused: stderr.trim() };
}

test("takes what was compiled, refuses what V8 does not know, and prints the same in each case", () => {
  const usual = check();
  expect(usual.wasRefused).toBe("false");
  expect(usual.stdout).toContain("lantern-bridge");
  writeFileSync(compiled, "of another version, or no code at all");
  expect(check()).toEqual({ ...usual, wasRefused: "true" });
  rmSync(compiled);
  expect(check()).toEqual({ ...usual, wasRefused: "undefined" });
});

test("says of check the same as the program with all commands does", () => {
  for (const args of [["check", "--help"], ["check"], ["check", "none.s1p"], ["check", sweep, "--plan", "atlantis"]]) {
    const { stdout, stderr, status } = spawnSync(process.execPath, [command, ...args], {
      encoding: "utf8",
      cwd: folder,
    });
    const [ofAll] = runEach([{ args, folder }]);
    expect({ stdout, stderr, exit: status }).toEqual(ofAll);
  }
});
