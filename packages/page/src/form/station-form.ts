import { html, type Markup, trusted } from "@feedpoint/answers/text/markup";
import { WORDS } from "../words.js";
import { type Field, fieldsOf, type Schema } from "./fields.js";
import { statedIn, textOf } from "./values.js";

/** The JSON Schema of the station file, put here by the build. */
declare const STATION_SCHEMA: Schema;

/** The plan and its class are chosen beside the form. */
const FIELDS: readonly Field[] = fieldsOf(STATION_SCHEMA).filter(({ path }) => path[0] !== "licence");

/** What a station file holds; nothing is taken out of it that the form does not show. */
type Stated = Readonly<Record<string, unknown>>;

/** The form with what is stated in it, a group for each part of the station file. */
export function stationForm(stated: Stated): Markup {
  const groups = [...new Set(FIELDS.map(({ path }) => path[0] ?? ""))];
  return html`${groups.map((group) => {
    const fields = FIELDS.filter(({ path }) => path[0] === group);
    const isStated = fields.some(({ path }) => at(stated, path) !== undefined);
    return html`<details class="group"${isStated ? html` open` : null}><summary>${WORDS.groups[group] ?? group}</summary>${fields.map((field) => fieldMarkup(field, stated))}</details>`;
  })}`;
}

/** What is shorter says a unit that the label says already. */
const SHORTEST_HELP = 3;

function fieldMarkup({ path, kind, choices, help }: Field, stated: Stated): Markup {
  const name = path.join(".");
  const text = textOf(kind, at(stated, path));
  const id = `station-${name}`;
  const isPlain = help.length <= SHORTEST_HELP;
  const hint = isPlain ? null : html`<small id="${id}-hint">${help}</small>`;
  const described = isPlain ? null : html` aria-describedby="${id}-hint"`;
  const label = WORDS.fields[name] ?? name;
  if (kind === "yes")
    return html`<p class="field"><label class="tick"><input type="checkbox" id="${id}" name="${name}" value="yes"${text === "" ? null : html` checked`}${described}> ${label}</label>${hint}</p>`;
  const input =
    kind === "choice"
      ? html`<select id="${id}" name="${name}"${described}>${["", ...choices].map((choice) => html`<option value="${choice}"${choice === text ? html` selected` : null}>${choice === "" ? WORDS.notStated : choice}</option>`)}</select>`
      : kind === "records"
        ? html`<textarea id="${id}" name="${name}" rows="2"${described}>${text.split("\n").map((line) => [line, trusted("\n")])}</textarea>`
        : html`<input id="${id}" name="${name}" value="${text}" autocomplete="off"${kind === "number" ? html` inputmode="decimal"` : null}${described}>`;
  return html`<p class="field"><label for="${id}">${label}</label>${input}${hint}</p>`;
}

/** What the form states now. @param stated what it was made of @param typed what stands in a field, by its name */
export function stationFrom(stated: Stated, typed: (name: string) => string): Stated {
  return FIELDS.reduce<Stated>((station, { path, kind }) => {
    const before = at(stated, path);
    const text = typed(path.join("."));
    // What was not touched stays as it was, to the last digit.
    return text === textOf(kind, before) ? station : placed(station, path, statedIn(kind, text, before));
  }, stated);
}

function at(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (below, key) => (typeof below === "object" && below !== null ? (below as Stated)[key] : undefined),
    value,
  );
}

/** The same with a value at a path; without what would be left empty. */
function placed(stated: Stated, [key = "", ...below]: readonly string[], value: unknown): Stated {
  const own = below.length === 0 ? value : placed((stated[key] ?? {}) as Stated, below, value);
  const isEmpty = own === undefined || (below.length > 0 && Object.keys(own as object).length === 0);
  const { [key]: _, ...others } = stated;
  return isEmpty ? others : { ...stated, [key]: own };
}
