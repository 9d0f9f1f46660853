/** Every code that a finding can have, and what it stands for. Codes do not change their meaning. */
export const FINDING_CODES = {
  // reading
  encoding: "The text is not UTF-8; it was read in the encoding named.",
  "reference-assumed": "The file states no reference impedance; 50 Ω was assumed.",
  "frequency-unit-default": "A Touchstone option line without a unit means GHz.",
  "frequency-unit-inferred": "The unit of frequency was told from the size of the numbers.",
  "option-line-repaired": "A blank missing in a Touchstone option line was supplied.",
  "second-option-line": "A second option line was ignored, as the specification wants.",
  "one-port-of-many": "One port's reflection was taken from a file of several ports.",
  "placeholder-values": "All values are practically zero, as in a parameter that was not measured.",
  "noise-data-skipped": "Noise parameters after the network data were skipped.",
  "unknown-keyword": "A keyword that the specification does not know was ignored.",
  "count-mismatch": "The file states another number of frequencies than it holds.",
  "text-after-end": "Text after [End] was ignored.",
  "last-row-cut": "The last row is incomplete, as in a file cut off; it was left out.",
  "row-without-number": "Rows without a usable number were left out.",
  "row-left-out": "Lines among the data that are no rows of numbers were left out.",
  "return-loss-negative": "A return loss with negative sign was read as S11 in dB.",
  "s11-positive": "An S11 in dB with positive sign was read as return loss.",
  "reactance-without-sign": "The reactance has lost its sign; only the size of the reflection was used.",
  "columns-disagree": "Columns that should say the same do not.",
  "frequency-descending": "The sweep runs from high to low and was turned round.",
  "frequency-not-ascending": "Rows out of order of frequency were sorted.",
  "frequency-not-positive": "Rows at or below 0 Hz were left out.",
  "frequency-repeated": "Rows of the same frequency were averaged.",
  "beyond-total-reflection": "Points with ρ above 1; their SWR counts as infinite.",
  "single-point": "A sweep of one point cannot be judged as a curve.",
  // judging
  "plan-common": "No band plan was chosen: what all three ITU Regions have in common was used.",
  "plan-from-memory": "Part of the band plan could not be confirmed from a source.",
  "class-not-stated": "No licence class was stated: the whole of each band was judged.",
  "step-too-coarse": "The sweep's step is too coarse for a band.",
  "loss-bound": "The sweep bounds the loss of the feedline from above.",
  "low-swr-may-be-loss": "A low SWR over a wide range may be loss and not radiation.",
  // comparing
  "no-overlap": "The two sweeps have no frequency in common.",
  "scalar-comparison": "A sweep without phase was compared; causes cannot be told apart.",
  "different-reference": "The two sweeps have different reference impedances; both were compared at the first one's.",
} as const;

export type FindingCode = keyof typeof FINDING_CODES;
