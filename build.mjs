/** Builds the packages: run by `pnpm build`, and before any is packed. */
import { buildCommand } from "./build/command.mjs";
import { buildLibrary } from "./build/library.mjs";
import { buildPage } from "./build/page.mjs";

process.chdir(import.meta.dirname);
await buildCommand();
await buildLibrary();
await buildPage();
