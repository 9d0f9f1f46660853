/**
 * Words in notes of SWR by hand: English, German, French, Dutch, Spanish and Italian (common practice, from memory), without
 * accents and in small letters.
 */
const anyOf = (words: readonly string[]): string =>
  `(?:${words.map((word) => word.normalize("NFD").replace(/\p{M}/gu, "")).join("|")})`;

export const SWR_WORD = anyOf([
  ...[
    "v?swr",
    "swv",
    "ros",
    "roe",
    "tos",
    "coe",
    "sgv",
    "rosv",
    "svf",
    "sbf",
    "sas",
    "wfs",
    "csv",
    "psv",
    "ddo",
    "aha",
    "rus",
  ],
  ...["ксвн?", "ксх", "λσκ", "στασιμα", "定在波比?", "驻波比?", "駐波比?", "정재파비?"],
]);
/** A reading is near what is noted; it counts as noted. */
export const ABOUT_WORD = anyOf([
  "[~≈]",
  "(?:between|zwischen|entre|tussen|tra|fra|mellan|mellem|mellom)\\s",
  "(?:about|around|roughly|some|approx\\.?|ca\\.?|circa|etwa|ungefahr|env\\.?|environ|ongeveer|aprox\\.?|unos)\\s",
]);
/** A reading is higher than what is noted. */
export const OVER_WORD = anyOf([
  "[>≥]=?",
  "(?:over|above|more than|uber|mehr als|plus de|meer dan|boven|mas de|oltre|piu di)\\s",
]);
/** A reading is lower than what is noted, which counts as noted. */
export const UNDER_WORD = anyOf([
  "[<≤]=?",
  "(?:under|below|less than|unter|weniger als|moins de|minder dan|onder|menos de|meno di)\\s",
]);
export const OFF_SCALE_WORD = anyOf(["∞", "inf(?:inity|inite)?\\b", "off\\s?scale\\b", "over\\b(?!\\s*\\d)"]);
export const UP_TO_WORD = anyOf(["-", "–", "—", "\\.{2,}", "…", "(?:to|bis|until|tot|a|fino a|and|und|et|y|e|en)\\b"]);
/** What a frequency stands behind. */
export const AT_WORD = anyOf(["@", "(?:at|bei|op|on|auf|a|en)\\b"]);
export const BAND_WORD = anyOf([
  "bande?",
  "banda",
  "bandet",
  "band(?:a|il)?",
  "pasm[oa]",
  "sav(?:on|ban)?",
  "kaista(?:lla)?",
  "bant(?:ta)?",
  "диапазон\\p{L}*",
  "діапазон\\p{L}*",
  "ζωνη",
  "μπαντα",
  "バンド",
  "波段",
  "밴드",
]);
export const METRES_WORD = "(?:m(?:et(?:er|re|ro)s?|etri\\p{L}*|etru)?|м(?:етр\\p{L}*)?)";
/** Says that something is so. */
export const IS_WORD = anyOf(["(?:gives|gave|shows|showed|reads|has|had|is|was|ist|war|est|es|era|er|var)\\b"]);
/** Another number than an SWR has one of these beside it. */
export const OTHER_UNIT = /^\s*(?:db\b|ohms?\b|%|w\b|watts?\b|v\b|°|deg|m\b|ft\b)/;

/** A line without accents and capitals, with one sign for each meaning. */
export const plainNote = (line: string): string =>
  line
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[Ωω\u2126]/gu, "ohm")
    .replace(/[-=]+>|→/g, " ");
