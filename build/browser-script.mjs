import { build } from "esbuild";
import { SHARED_OPTIONS } from "./shared-options.mjs";

/** A script for a browser, to be written into a page: its text, and what it was made of. @param options of esbuild besides */
export async function browserScript(entry, options = {}) {
  const { outputFiles, metafile } = await build({
    ...SHARED_OPTIONS,
    bundle: true,
    entryPoints: [entry],
    platform: "browser",
    format: "iife",
    target: "es2022",
    minify: true,
    write: false,
    metafile: true,
    ...options,
  });
  const text = outputFiles[0].text.trim();
  if (/<\/script|<!--/i.test(text)) throw new Error(`${entry} would end the element that it stands in.`);
  return { text, metafile };
}
