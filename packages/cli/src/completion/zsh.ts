import type { OutlinedCommand, OutlinedOption } from "./outline.js";

/** A script for zsh, with what each command and option is for. */
export function zshCompletion(commands: readonly OutlinedCommand[]): string {
  const top = commands.filter(({ path }) => !path.includes(" "));
  return `#compdef feedpoint
# zsh completion of feedpoint
_feedpoint() {
  local -a commands=(
${top.map(({ path, description }) => `    ${quoted(`${path}:${description}`)}`).join("\n")}
  )
  if ((CURRENT == 2)); then
    _describe command commands
    return
  fi
  case "$words[2]" in
${top.map((command) => (command.isParent ? parent(command, commands) : `    ${command.path})\n      shift words\n      ((CURRENT--))\n${argumentsOf(command)}\n      ;;`)).join("\n")}
  esac
}
if [ "$funcstack[1]" = _feedpoint ]; then _feedpoint "$@"; else compdef _feedpoint feedpoint; fi
`;
}

function parent({ path }: OutlinedCommand, commands: readonly OutlinedCommand[]): string {
  const inner = commands.filter((other) => other.path.startsWith(`${path} `));
  const nameOf = (command: OutlinedCommand) => command.path.slice(path.length + 1);
  return `    ${path})
      local -a inner=(${inner.map((command) => quoted(`${nameOf(command)}:${command.description}`)).join(" ")})
      if ((CURRENT == 3)); then
        _describe command inner
        return
      fi
      case "$words[3]" in
${inner.map((command) => `        ${nameOf(command)})\n      shift 2 words\n      ((CURRENT -= 2))\n${argumentsOf(command)}\n          ;;`).join("\n")}
      esac
      ;;`;
}

function argumentsOf({ options, choices }: OutlinedCommand): string {
  const rest = choices.length === 0 ? "*:file:_files" : `1:what:(${choices.join(" ")})`;
  return ["      _arguments", ...options.flatMap(specifications), quoted(rest)].join(" \\\n        ");
}

function specifications({ long, short, description, takesValue, values }: OutlinedOption): readonly string[] {
  const about = description.replaceAll(/[[\]]/g, "\\$&");
  const value = takesValue ? `:value:${values.length === 0 ? "_files" : `(${values.join(" ")})`}` : "";
  return [long, ...(short === null ? [] : [short])].map((flag) => quoted(`${flag}[${about}]${value}`));
}

const quoted = (text: string) => `'${text.replaceAll("'", `'\\''`)}'`;
