import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { runCommand, runLines, splitArguments } from "./run-command.js";

/**
 * Each folder below cases/ holds `cmd` (the arguments), what the command must print (`stdout`, `stderr`) and its `exit`
 * code, perhaps `input` for standard input. `UPDATE_CASES=1` writes what is printed now; read the difference before
 * committing it.
 */
const folder = fileURLToPath(new URL("cases/", import.meta.url));
const read = (path: string) => (existsSync(path) ? readFileSync(path, "utf8") : "");

const names = readdirSync(folder);
const hasInput = (name: string) => existsSync(`${folder}${name}/input`);
const outcomes = runLines(names.filter((name) => !hasInput(name)).map((name) => read(`${folder}${name}/cmd`)));

describe("the command", () => {
  for (const name of names) {
    const place = `${folder}${name}/`;
    test(name.replaceAll("-", " "), () => {
      const line = read(`${place}cmd`);
      const known = hasInput(name) ? undefined : outcomes.get(line);
      const outcome = known ?? runCommand(splitArguments(line), read(`${place}input`));
      if (process.env.UPDATE_CASES) {
        writeFileSync(`${place}stdout`, outcome.stdout);
        writeFileSync(`${place}stderr`, outcome.stderr);
        writeFileSync(`${place}exit`, `${outcome.exit}\n`);
      }
      expect(outcome.stderr).toBe(read(`${place}stderr`));
      expect(outcome.stdout).toBe(read(`${place}stdout`));
      expect(outcome.exit).toBe(Number(read(`${place}exit`)));
    });
  }
});
