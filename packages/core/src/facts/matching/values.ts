/** Values that parts are sold in: the E12 series of IEC 60063 (the standard from memory). */
const E12 = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

/** The values of the series between two, both included. */
export function seriesValues(least: number, greatest: number): readonly number[] {
  const values: number[] = [];
  for (let decade = Math.floor(Math.log10(least)); decade <= Math.log10(greatest); decade++) {
    for (const step of E12) {
      const value = Number(`${step}e${decade}`);
      if (value >= least && value <= greatest) values.push(value);
    }
  }
  return values;
}
