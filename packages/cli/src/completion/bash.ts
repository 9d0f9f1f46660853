import type { OutlinedCommand, OutlinedOption } from "./outline.js";

/** A script for bash: commands, options and their values; file names wherever nothing else is known. */
export function bashCompletion(commands: readonly OutlinedCommand[]): string {
  const names = commands.filter(({ path }) => !path.includes(" ")).map(({ path }) => path);
  return `# bash completion of feedpoint
_feedpoint() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" path="\${COMP_WORDS[1]}"
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W "${[...names, "help", "--help", "--version"].join(" ")}" -- "$word"))
    return
  fi
  case "$path" in
${commands
  .filter(({ isParent }) => isParent)
  .map(({ path }) => parent(path, commands))
  .join("\n")}
  esac
  case "$path" in
${commands
  .filter(({ isParent }) => !isParent)
  .map(single)
  .join("\n")}
  esac
}
complete -o default -F _feedpoint feedpoint
`;
}

function parent(path: string, commands: readonly OutlinedCommand[]): string {
  const inner = commands
    .filter((other) => other.path.startsWith(`${path} `))
    .map((other) => other.path.slice(path.length + 1));
  return `    ${path})
      if ((COMP_CWORD == 2)); then
        COMPREPLY=($(compgen -W "${inner.join(" ")}" -- "$word"))
        return
      fi
      path="${path} \${COMP_WORDS[2]}"
      ;;`;
}

function single({ path, options, choices }: OutlinedCommand): string {
  const valued = options.filter(({ values }) => values.length > 0);
  const files = options.filter(({ takesValue, values }) => takesValue && values.length === 0);
  const names = options.map(({ long }) => long);
  return `    "${path}")
      case "$before" in
${[
  ...valued.map(
    (option) =>
      `        ${flags(option)}) COMPREPLY=($(compgen -W "${option.values.join(" ")}" -- "$word")); return ;;`,
  ),
  ...(files.length === 0 ? [] : [`        ${files.map(flags).join("|")}) return ;;`]),
].join("\n")}
      esac
      if [[ "$word" == -* ]]; then
        COMPREPLY=($(compgen -W "${[...names, "--help"].join(" ")}" -- "$word"))
      ${choices.length === 0 ? "" : `else\n        COMPREPLY=($(compgen -W "${choices.join(" ")}" -- "$word"))\n      `}fi
      ;;`;
}

const flags = ({ long, short }: OutlinedOption) => (short === null ? long : `${long}|${short}`);
