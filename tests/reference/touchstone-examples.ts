/**
 * The examples of the Touchstone specification as files.
 *
 * Source: IBIS Open Forum, Touchstone File Format Specification, Rev 1.1 (2002), Version 2.0 (2009) and Version 2.1
 * (2024). Example numbers differ by edition and stand at each. Wording of comments and the entries of the four-ports
 * other than S11 are from memory; no test rests on them.
 */

/** Rev 1.1 example 1, 2.0 example 8, 2.1 example 9 */
export const ONE_PORT_S = `!1-port S-parameter file, single frequency point
# MHz S MA R 50
!freq magS11 angS11
2.000 0.894 -12.136
`;

/** Rev 1.1 example 2, 2.0 example 9, 2.1 example 10: keyword-free, so the data are normalised to 75 ohm */
export const ONE_PORT_Z_NORMALISED = `!1-port Z-parameter file, multiple frequency points
# MHz Z MA R 75
!freq magZ11 angZ11
100 0.99 -4
200 0.80 -22
300 0.707 -45
400 0.40 -62
500 0.01 -89
`;

/** 2.0 example 10, 2.1 example 11: the same impedances in ohms, with a reference that they do not depend on */
export const ONE_PORT_Z_OHMS = `!1-port Z-parameter file, multiple frequency points
[Version] 2.0
# MHz Z MA
[Number of Ports] 1
[Number of Frequencies] 5
[Reference] 20.0
[Network Data]
!freq magZ11 angZ11
100 74.25 -4
200 60 -22
300 53.025 -45
400 30 -62
500 0.75 -89
[End]
`;

/** Rev 1.1 example 3, 2.0 example 11, 2.1 example 12 */
export const TWO_PORT_H = `! 2-port H-parameter file, single frequency point
# KHz H MA R 1
! freq magH11 angH11 magH21 angH21 magH12 angH12 magH22 angH22
2 .95 -26 3.57 157 .04 76 .66 -14
`;

/** 2.0 example 12, 2.1 example 13; edition 2.0 prints its first line with the number inside the brackets */
export const TWO_PORT_H_VERSION_2 = `! 2-port H-parameter file, single frequency point
[Version 2.0]
# KHz H MA R 1
[Number of Ports] 2
[Two-Port Data Order] 21_12
[Number of Frequencies] 1
[Matrix Format] Full
[Network Data]
! freq magH11 angH11 magH21 angH21 magH12 angH12 magH22 angH22
2 .95 -26 3.57 157 .04 76 .66 -14
[End]
`;

/** Rev 1.1 example 4, 2.0 example 13, 2.1 example 14 */
export const TWO_PORT_S = `!2-port S-parameter file, three frequency points
# GHz S RI R 50.0
!freq ReS11 ImS11 ReS21 ImS21 ReS12 ImS12 ReS22 ImS22
1.0000 0.3926 -0.1211 -0.0003 -0.0021 -0.0003 -0.0021 0.3926 -0.1211
2.0000 0.3517 -0.3054 -0.0096 -0.0298 -0.0096 -0.0298 0.3517 -0.3054
10.000 0.3419 0.3336 -0.0134 0.0379 -0.0134 0.0379 0.3419 0.3336
`;

/** Rev 1.1 example 5, 2.0 example 14, 2.1 example 15 */
export const FOUR_PORT_S = `! 4-port S-parameter data, taken at three frequency points
# GHz S MA R 50
5.00000 0.60 161.24 0.40 -42.20 0.42 -66.58 0.53 -79.34 !row 1
 0.40 -42.20 0.60 161.20 0.53 -79.34 0.42 -66.58 !row 2
 0.42 -66.58 0.53 -79.34 0.60 161.24 0.40 -42.20 !row 3
 0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4
6.00000 0.57 150.37 0.40 -44.34 0.41 -81.24 0.57 -95.77 !row 1
 0.40 -44.34 0.57 150.37 0.57 -95.77 0.41 -81.24 !row 2
 0.41 -81.24 0.57 -95.77 0.57 150.37 0.40 -44.34 !row 3
 0.57 -95.77 0.41 -81.24 0.40 -44.34 0.57 150.37 !row 4
7.00000 0.50 136.69 0.45 -46.41 0.37 -99.09 0.62 -114.19 !row 1
 0.45 -46.41 0.50 136.69 0.62 -114.19 0.37 -99.09 !row 2
 0.37 -99.09 0.62 -114.19 0.50 136.69 0.45 -46.41 !row 3
 0.62 -114.19 0.37 -99.09 0.45 -46.41 0.50 136.69 !row 4
`;

/** 2.0 example 5, 2.1 example 6: a reference per port on one line, the whole matrix */
export const FOUR_PORT_FULL = `! 4-port S-parameter data, default impedance overridden
[Version] 2.0
# GHz S MA R 50
[Number of Ports] 4
[Number of Frequencies] 1
[Reference] 50 75 0.01 0.01
[Matrix Format] Full
[Network Data]
5.00000 0.60 161.24 0.40 -42.20 0.42 -66.58 0.53 -79.34 !row 1
 0.40 -42.20 0.60 161.20 0.53 -79.34 0.42 -66.58 !row 2
 0.42 -66.58 0.53 -79.34 0.60 161.24 0.40 -42.20 !row 3
 0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4
[End]
`;

/** 2.0 example 6, 2.1 example 7: references over two lines, the lower triangle only */
export const FOUR_PORT_LOWER = `! 4-port S-parameter data, default impedance overridden
[Version] 2.0
# GHz S MA R 50
[Number of Ports] 4
[Number of Frequencies] 1
[Reference] 50 75
0.01 0.01
[Matrix Format] Lower
[Network Data]
5.00000 0.60 161.24 !row 1
 0.40 -42.20 0.60 161.20 !row 2
 0.42 -66.58 0.53 -79.34 0.60 161.24 !row 3
 0.53 -79.34 0.42 -66.58 0.40 -42.20 0.60 161.24 !row 4
[End]
`;

/** Rev 1.1 example 8, 2.0 example 18, 2.1 example 19: all defaults, and noise parameters from the first descent on */
export const NOISE_KEYWORD_FREE = `!2-port network, S-parameter and noise data
#
! NETWORK PARAMETERS
2 .95 -26 3.57 157 .04 76 .66 -14
22 .60 -144 1.30 40 .14 40 .56 -85
! NOISE PARAMETERS
4 .7 .64 69 .38
18 2.7 .46 -33 .40
`;

const noiseVersion2 = (order: string) => `!2-port network, S-parameter and noise data
[Version] 2.0
# GHz S MA R 50
[Number of Ports] 2
[Two-Port Data Order] ${order}
[Number of Frequencies] 2
[Number of Noise Frequencies] 2
[Reference] 50 25.0
[Network Data]
! NETWORK PARAMETERS
2 .95 -26 3.57 157 .04 76 .66 -14
22 .60 -144 1.30 40 .14 40 .56 -85
[Noise Data]
! NOISE PARAMETERS
4 .7 .64 69 19
18 2.7 .46 -33 20
[End]
`;

/** 2.0 example 17, 2.1 example 18 */
export const NOISE_VERSION_2 = noiseVersion2("21_12");

/** 2.1 example 21: the same numbers under the other order */
export const NOISE_ORDER_12_21 = noiseVersion2("12_21");
