/** Builds both packages: run by `pnpm build`, and before either is packed. */
import { buildCommand } from "./build/command.mjs";
import { buildLibrary } from "./build/library.mjs";

process.chdir(import.meta.dirname);
await buildCommand();
await buildLibrary();
