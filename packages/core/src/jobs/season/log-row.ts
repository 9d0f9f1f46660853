/** A row of a deployment log: what the operator wrote under each column. */
export type LogRow = Readonly<Record<string, string>>;
