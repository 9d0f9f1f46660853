import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";

const LICENCE = /^(licen[cs]e|copying|notice)/i;

/** The licences of all packages that have a part in a bundle, each with its notices in full. */
export function thirdPartyNotices({ inputs, outputs }) {
  const parts = Object.values(outputs).flatMap((output) =>
    Object.entries(output.inputs).flatMap(([path, { bytesInOutput }]) => (bytesInOutput > 0 ? [path] : [])),
  );
  const folders = new Set(parts.filter((path) => path in inputs && /node_modules/.test(path)).map(packageFolder));
  const notices = Array.from(folders, noticeOf).toSorted();
  return `This holds code of these packages.\n\n${notices.join(`\n${"-".repeat(80)}\n\n`)}`;
}

/** The folder of the package that a file belongs to; a package.json further down, which only tells a kind of modules, has no name. */
function packageFolder(path) {
  const folder = dirname(path);
  const file = join(folder, "package.json");
  return existsSync(file) && JSON.parse(readFileSync(file, "utf8")).name !== undefined ? folder : packageFolder(folder);
}

function noticeOf(folder) {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const texts = readdirSync(folder)
    .filter((file) => LICENCE.test(file))
    .map((file) => readFileSync(join(folder, file), "utf8").trim());
  if (texts.length === 0) throw new Error(`${name} comes without the text of its licence.`);
  return `${name} ${version} (${license})\n\n${texts.join("\n\n")}\n`;
}
