/** Quantile that holds 95 % on both sides, for 1, 2, 3, … degrees of freedom (handbook table, from memory). */
const STUDENT_95 = [12.71, 4.3, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23];
const NORMAL_95 = 1.96;

/**
 * How many standard errors of a mean hold it with 95 %, where the error was itself told from a few values.
 *
 * @param freedom degrees of freedom, 1 or more
 */
export const student95 = (freedom: number): number =>
  // Beyond the table the first term of the series in 1 / freedom is right to 0.01.
  STUDENT_95[freedom - 1] ?? NORMAL_95 + 2.4 / freedom;
