/** The item at the index, or a failure that says the list is too short. */
export function at<Item>(list: readonly Item[], index: number): Item {
  const item = list[index];
  if (item === undefined) throw new RangeError(`no item ${index} in a list of ${list.length}`);
  return item;
}
