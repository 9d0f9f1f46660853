/** The one in the middle of some sizes; 0 for none. */
export const medianOf = (sizes: number[]): number => sizes.sort((a, b) => a - b)[sizes.length >> 1] ?? 0;
