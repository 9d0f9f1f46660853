/** A copy of a column with twice the room, for columns that are filled without their length being known. */
export function doubled<Numbers extends Float64Array | Uint32Array>(old: Numbers): Numbers {
  const next = new (old.constructor as new (length: number) => Numbers)(2 * old.length);
  next.set(old);
  return next;
}
