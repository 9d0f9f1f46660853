import { DOTTED, withoutDots } from "../quantities/name-words.js";
import { withPlainNumbers } from "./plain-numbers.js";
import { withFigures } from "./spoken-numbers.js";

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
  ...[
    "standing waves?(?: ratio)?",
    "rapporto (?:di |d')?onde stazionarie",
    "(?:taux|rapport) d'ondes stationnaires",
    "(?:relacion|razon|relacao) de ondas estacionarias",
    "ratio of (?:standing|stationary) waves",
    "stehwellen?(?:verhaltnis)?",
    "estacionarias?",
    "stazionarie",
    "staandegolf(?:verhouding)?",
    "sta(?:en)?dev?agf?(?:orhallande)?",
    "staendevag",
    "standbolge(?:forhold)?",
    "allohullam(?:arany)?",
    "unde stationare",
  ],
  ...["ксвн?", "ксх", "λσκ", "στασιμα", "定在波比?", "驻波比?", "駐波比?", "정재파비?"],
]);
/** A reading is near what is noted; it counts as noted. So does the beginning of a range. */
export const ABOUT_WORD = anyOf([
  "[~≈]",
  "(?:between|from|anywhere|zwischen|von|entre|de|du|desde|tussen|van|tra|fra|da|dal|mellan|fran|mellem|mellom|miedzy|od|mezi|intre|kozott|от|від|между|між|απο|arasinda|valilla)\\s",
  "(?:about|around|roughly|some|circa|nearly|almost|close to|approx(?:imately)?\\.?|ca\\.?)\\s",
  "(?:etwa|ungefahr|rund|gut|knapp|fast|env\\.?|environ|a peu pres|presque|ongeveer|bijna|rond|aprox\\.?|aproximadamente|unos|casi|cerca de|por volta de)\\s",
  "(?:quasi|intorno a|ungefar|omkring|runt|omtrent|okolo|około|ok\\.?|asi|priblizne|noin|kb\\.?|korulbelul|cam|aproximativ|около|примерно|близько|приблизно|περιπου|yaklasik)\\s",
]);
/** A reading is higher than what is noted. */
export const OVER_WORD = anyOf([
  "[>≥]=?",
  "(?:over|above|beyond|more than|higher than|greater than|at least|worse than|upwards of|north of)\\s",
  "(?:uber|mehr als|mindestens|hoher als|grosser als|plus de|au moins|superieure? a|au-dessus de|meer dan|boven|minstens|hoger dan)\\s",
  "(?:mas de|superior a|por encima de|al menos|mais de|acima de|pelo menos|oltre|piu di|sopra|almeno|superiore a|over|mer an|minst|mere end|mer enn|yli)\\s",
  "(?:ponad|powyzej|wiecej niz|pres|nad|vic nez|vice nez|tobb mint|peste|mai mult de|больше|более|выше|свыше|більше|понад|вище|πανω απο|fazla|uzerinde)\\s",
]);
/** A reading is lower than what is noted, which counts as noted. */
export const UNDER_WORD = anyOf([
  "[<≤]=?",
  "(?:(?:no|not|never) (?:worse|more|higher) than|(?:no|not|never) (?:over|above)|better than|up to|at most|under|below|less than|lower than|inside|within)\\s",
  "(?:unter(?:halb)?|hochstens|besser als|weniger als|bis zu|moins de|au plus|mieux que|inferieure? a|sous|en dessous de|minder dan|onder|hoogstens|beter dan|lager dan)\\s",
  "(?:menos de|inferior a|por debajo de|como mucho|abaixo de|ate|no maximo|meno di|sotto|al massimo|inferiore a|under|mindre an|hogst|mindre end|mindre enn|alle)\\s",
  "(?:ponizej|mniej niz|najwyzej|pod|mene nez|nejvyse|kevesebb mint|sub|mai putin de|меньше|менее|ниже|менше|нижче|κατω απο|altinda)\\s",
]);
/** What is swept, between a band and its SWR. */
export const ANTENNA_WORD = anyOf([
  "antennas?|aerial|dipoles?|doublet|vertical|loop|wire|(?:inv(?:erted)? )?vee|whip|beam|yagi|end-?fed|efhw|ladder|sloper|delta",
  "antenne|antena|anten|dipol|draht|schleife|filaire|hilo|filo|draad|антенна|диполь|провод",
]);
/** Behind a number: it is the least, or the greatest. */
export const OR_MORE = anyOf([
  "(?:\\+(?!\\d)|or (?:more|worse|higher)|and (?:up|more|above|over)|plus|oder mehr|ou plus|o mas|of meer|o piu|ou mais)",
]);
export const OR_LESS = anyOf([
  "(?:or (?:less|better|lower|under|below)|oder (?:weniger|besser)|ou moins|ou mieux|o menos|of minder|of beter|o meno|ou menos)",
]);
export const OFF_SCALE_WORD = anyOf([
  "∞",
  "inf(?:inity|inite)?\\b",
  "off\\s?-?(?:the )?(?:scale|chart|clock|meter|dial)\\b",
  "over\\b(?!\\s*\\d)",
  "(?:hors (?:d')?(?:l')?echelle|fuera de (?:la )?escala|fora d[ae] escala|fuori scala|buiten (?:de |het )?(?:schaal|bereik)|(?:ausserhalb|jenseits) der skala|skalenende|(?:voll)?anschlag|en butee)\\b",
  "(?:poza skala|mimo (?:stupnici|rozsah)|utanfor skalan|uden for skalaen|utenfor skalaen|yli asteikon|in afara scalei|за шкалой|за шкалою|зашкаливает|зашкалює|εκτος κλιμακας|skala disi|skalan kivul)",
  "(?:pinned|pegged|pegs|maxed out|end of the (?:scale|dial)|needle (?:at|against|on|hard against|hits) the (?:stop|peg|pin|end)|full scale|hard over)\\b",
]);
/** Stands for the SWR that was noted before. */
export const SAME_WORD = anyOf([
  "(?:the )?same(?: again)?",
  "ditto",
  "idem",
  "dito",
  "gleich",
  "pareil",
  "igual",
  "uguale",
]);
/** Says that nothing comes back. */
export const MATCHED_WORD = anyOf([
  "(?:dead )?flat",
  "perfect(?:ly)?(?: matched)?",
  "perfekt",
  "parfait",
  "perfecto",
  "perfetto",
]);
export const UP_TO_WORD = anyOf([
  "-",
  "–",
  "—",
  "\\.{2,}",
  "…",
  "(?:to|bis|until|through|tot|a|hasta|fino a|ate|au|al|and|und|et|y|e|en|i|och|og|do|az|az po|til|till|ja|pana la|до|και|ως|ile)(?!\\p{L})",
]);
/** What a frequency stands behind. */
export const AT_WORD = anyOf([
  "@",
  "(?:at|bei|bij|op|on|auf|a|en|pa|na|em|su|sur|ved|vid)\\b",
  "(?:на|при|στα|στουσ)(?!\\p{L})",
]);
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
export const METRES_WORD = "(?:米|m(?:trs?|et(?:er|re|ro)s?|etri\\p{L}*|etru)?|м(?:етр\\p{L}*)?)";
/** Behind an SWR, what says over which frequencies it is not exceeded: "below 2 from 7.0 to 7.15". */
export const EXTENT_WORD = anyOf(["from|between|for|over|across|all|von|zwischen|de|da|van|tussen|entre|desde"]);
/** Joins two places, or two numbers. */
export const JOIN_WORD = anyOf([
  "&",
  "both",
  "all",
  "each",
  "and",
  "und",
  "et",
  "y",
  "e",
  "en",
  "beide",
  "les deux",
  "ambos",
  "ambas",
]);
/** What may stand beside a place and its SWR without changing them. */
export const FILLER_WORD = anyOf([
  "dann|da|det|het|il|elle|waren|lag|zeigt|sono|son|sao|ar",
  "gives|gave|given|shows|showed|reads|read|reading|has|had|is|was|are|were|ist|war|est|era|er|var|c'est|es",
  "reaches|rises to|drops to|falls to|climbs to|betragt|liegt|bandanfang|bandmitte|bandende|band ?(?:edge|start|end)",
  "came|comes|come|went|goes|gets?|got|in|out|with|the|an?|of|my|its?|at|on|now|then|still|again|today|yesterday|only|just",
  "anywhere|measured|measure|noted|found|or so|say|call it|maybe|it",
  "swr|ratio|to|one|band|bande?s?|metres?|meters?|across|all|over all|everywhere|throughout|here|there",
  "low(?:er|est)?|mid(?:dle)?|high(?:er|est)?|top|bottom|start|end|begin(?:ning)?|cent(?:re|er)|edges?|ends?|min(?:imum)?|max(?:imum)?|best|worst|dip",
  "anfang|mitte|ende|unten|oben|debut|milieu|fin|bas|haut|inicio|medio|final|inizio|centro|fine|begin|midden|eind(?:e)?",
  "cw|ssb|phone|fone|data|digi(?:tal)?|ft8",
  "ich|habe|gemessen|mesure|j'ai|he|medido|ho|misurato|ik|heb|gemeten|im|auf|bei|am|an|sur|en|sul|su|op|i",
]);
/** A reading of another quantity has one of these beside it. */
export const READING_UNIT = /^\s*(?:db\b|ohms?\b|%|°)/;
/** So has a number that is no reading: a power, a voltage, a height, a length, a count, a time, a temperature. */
export const OTHER_UNIT =
  /^\s*(?:k?w\b|watts?\b|v\b|volts?\b|deg\b|°?[cf]\b|[cm]?m\b|met(?:er|re)s?\b|f(?:oo|ee)?t\b|s\b|min\b|minutes?\b|h\b|hours?\b|pm\b|am\b|o'?clock\b|uhr\b|st\b|nd\b|rd\b|th\b|turns?\b|el(?:em(?:ents?)?)?\b|radials?\b|wires?\b|times?\b|x\b|days?\b|weeks?\b)/;
/** Behind metres these make a length of them, and no band. */
export const LENGTH_WORD = anyOf([
  "up|high|above|agl|of|over(?! ?\\d)|from|away|long|longer|shorter|lower|further|apart|deep|wire|coax|cable|line|rope|pole|mast|feeder|radial",
  "hoch|uber|lang|langer|kurzer|kabel|draht|mast|de (?:haut|long|fil|cable|coax)|alto|di (?:filo|cavo)|largo|de (?:alto|largo|hilo|cable)|hoog|draad",
]);

/** Before metres these have that length, and there is no band. */
export const LENGTHY_WORD = anyOf([
  "masts?|poles?|feed ?lines?|coax|cables?|wires?|radials?|counterpoises?|distance|heights?|length|rope|lines?|span|guys?",
  "kabel|koax|hohe|lange|abstand|draht|gegengewicht|leitung|fil|hauteur|longueur|cavo|altezza|lunghezza|distanza",
  "altura|longitud|distancia|hilo|hoogte|lengte|afstand|draad|voedingslijn",
  // "raised by 2 m"
  "by|um",
]);

/** A line without accents and capitals, with one sign for each meaning. */
export const plainNote = (line: string): string =>
  withFigures(
    withPlainNumbers(line)
      .normalize("NFD")
      .replace(/\p{M}/gu, "")
      .toLowerCase()
      .replace(/ß/g, "ss")
      .replace(/ł/g, "l")
      .replace(/ø/g, "o"),
  )
    .replace(/[Ωω\u2126]/gu, "ohm")
    .replace(DOTTED, withoutDots)
    .replace(/(?<=\d\s?)([мк]?)гц(?!\p{L})/gu, (_, prefix: string) => `${{ м: "m", к: "k" }[prefix] ?? ""}hz`)
    .replace(
      /(?<=\d\s?)(mega|兆|k(?=ilo)|千)?(?:ilo)?(?:hertz|赫兹?)/g,
      (_, prefix = "") => `${UNIT_PREFIXES[prefix] ?? ""}hz`,
    )
    .replace(/(?<=\d\s?)([mk])cs?(?:\/s)?(?!p{L})/g, "$1hz")
    .replace(/(?<=\d\s?)decibels?(?!p{L})/g, "db")
    // "3,450 kHz", "3.650.000 Hz"
    .replace(/\b([1-9]\d{0,2}),(\d{3})(?=\s?khz\b)/g, "$1$2")
    .replace(/\b([1-9]\d{0,2})\.(\d{3})\.(\d{3})(?=\s?hz\b)/g, "$1$2$3")
    .replace(/[\u00a0\u2000-\u200a\u202f]/g, " ")
    .replace(/\b(v?swr)(?=\d[.,]\d)/g, "$1 ")
    .replace(/(?<=\d) up to (?=\d)/g, " to ")
    .replace(/[’‘`´]/g, "'")
    .replace(/：/g, ":")
    .replace(/[-=]+>|→/g, " ");

const UNIT_PREFIXES: Readonly<Record<string, string>> = { mega: "m", 兆: "m", k: "k", 千: "k" };
