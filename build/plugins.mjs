/** What esbuild does to the sources on their way into the library and the command. */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";

/** at(column, index) as column[index]: code that runs once or twice, in a short command, is slow to call anything. */
export const inlineAt = {
  name: "inline-at",
  setup({ onLoad }) {
    onLoad({ filter: /packages[\\/]core[\\/]src[\\/].*\.ts$/ }, ({ path }) => ({
      contents: withoutCallsOfAt(readFileSync(path, "utf8")),
      loader: "ts",
    }));
  },
};

function withoutCallsOfAt(source) {
  const call = /(?<![\w$.])at\(([\w.]+), /.exec(source);
  if (call === null) return source;
  const start = call.index + call[0].length;
  let end = start;
  for (let depth = 1; depth > 0; end++) depth += "([{".includes(source[end]) ? 1 : ")]}".includes(source[end]) ? -1 : 0;
  const index = withoutCallsOfAt(source.slice(start, end - 1));
  return `${source.slice(0, call.index)}${call[1]}[${index}]${withoutCallsOfAt(source.slice(end))}`;
}

/**
 * Files of the library as modules of their own, which import each other; only bytes by name and the like are written out where
 * they are used. Data is a module beside its JSON, as Node 20 warns where a module imports JSON itself.
 */
export const separateModules = {
  name: "separate-modules",
  setup({ onResolve }) {
    onResolve({ filter: /^\./ }, ({ path, importer, resolveDir }) => {
      if (importer === "") return undefined;
      const file = join(resolveDir, path.replace(/\.js$/, ".ts"));
      if (isOfNumbers(file)) return { path: file, sideEffects: false };
      return { path: path.replace(/\.json$/, ".json.js"), external: true, sideEffects: false };
    });
  },
};

/** Whether a file holds named numbers and nothing else. */
function isOfNumbers(file) {
  const statements = readFileSync(file, "utf8").replaceAll(/\/\*.*?\*\/|\/\/[^\n]*/gs, "");
  return /^(\s*export const \w+ = -?[\w.]+;)+\s*$/.test(statements);
}

/** commander can start other programs, which nothing here does; to load what it needs for that takes longer than commander. */
export const withoutChildProcess = {
  name: "without-child-process",
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^node:child_process$/ }, () => ({ path: "none", namespace: "without-child-process" }));
    onLoad({ filter: /.*/, namespace: "without-child-process" }, () => ({ contents: "module.exports = {};" }));
  },
};

/**
 * Data as a text that is parsed when any of it is asked for: V8 reads it in less time than the same data as code, and what a
 * command has no use for is not read.
 */
export const parsedJson = {
  name: "parsed-json",
  setup({ onLoad }) {
    onLoad({ filter: /\.json$/ }, ({ path }) => ({ contents: parsedLate(JSON.parse(readFileSync(path, "utf8"))) }));
  },
};

function parsedLate(data) {
  const members = Object.keys(data).map(
    (key) => `get ${JSON.stringify(key)}() { return of()[${JSON.stringify(key)}]; },`,
  );
  return `const text = ${JSON.stringify(JSON.stringify(data))};
let data;
const of = () => (data ??= JSON.parse(text));
export default { ${members.join("\n")} };`;
}

/** Of simple-statistics what is used, and not the tables that it makes when it is loaded. */
export const usedStatistics = {
  name: "used-statistics",
  setup({ onResolve, resolve }) {
    onResolve({ filter: /^simple-statistics$/ }, async ({ importer, resolveDir, kind }) => {
      const { path } = await resolve("simple-statistics/package.json", { importer, resolveDir, kind });
      return { path: join(dirname(path), "index.js"), sideEffects: false };
    });
    onResolve({ filter: /^\.\// }, ({ path, resolveDir }) =>
      /[\\/]simple-statistics[\\/]?/.test(resolveDir)
        ? { path: join(resolveDir, path), sideEffects: false }
        : undefined,
    );
  },
};
