import type { OutlinedCommand, OutlinedOption } from "./outline.js";

/** A script for fish, with what each command and option is for. */
export function fishCompletion(commands: readonly OutlinedCommand[]): string {
  return ["# fish completion of feedpoint", ...commands.flatMap(linesOf), ""].join("\n");
}

function linesOf({ path, description, options, choices }: OutlinedCommand): readonly string[] {
  const [name = "", inner] = path.split(" ");
  const isHere =
    inner === undefined
      ? `__fish_seen_subcommand_from ${name}`
      : `__fish_seen_subcommand_from ${name}; and __fish_seen_subcommand_from ${inner}`;
  const isWanted =
    inner === undefined
      ? "__fish_use_subcommand"
      : `__fish_seen_subcommand_from ${name}; and not __fish_seen_subcommand_from ${inner}`;
  return [
    `complete -c feedpoint -n ${quoted(isWanted)} -f -a ${inner ?? name} -d ${quoted(description)}`,
    ...(choices.length === 0 ? [] : [`complete -c feedpoint -n ${quoted(isHere)} -f -a ${quoted(choices.join(" "))}`]),
    ...options.map(
      (option) => `complete -c feedpoint -n ${quoted(isHere)} ${flagsOf(option)} -d ${quoted(option.description)}`,
    ),
  ];
}

function flagsOf({ long, short, takesValue, values }: OutlinedOption): string {
  const names = [`-l ${long.replace(/^--/, "")}`, ...(short === null ? [] : [`-s ${short.replace(/^-/, "")}`])];
  const value = !takesValue ? [] : values.length === 0 ? ["-r -F"] : [`-x -a ${quoted(values.join(" "))}`];
  return [...names, ...value].join(" ");
}

const quoted = (text: string) => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
