/** The value of a table at a name from outside; undefined where it has none, whatever every object brings along ("constructor"). */
export const lookUp = <Value>(table: Readonly<Record<string, Value>>, name: string): Value | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;
