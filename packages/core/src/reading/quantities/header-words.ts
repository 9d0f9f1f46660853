import { withoutAccents } from "./name-words.js";

/**
 * Words of header cells by meaning. English and the trade's own signs first, then those of other languages (from memory, no
 * source), with accents as their languages write them: they are compared without.
 */
export const WORDS = {
  frequency: words(
    "freq frequency frequencies freqs frq f hz khz mhz ghz гц кгц мгц ггц",
    "frequenzen fréquences frecuencias frequências frequenze frequenties frekvenser frekvence frekvenciák frecvențe",
    "częstotliwości kmitočty taajuudet частоты частоти συχνότητες frekanslar częst kmit част συχν",
    "frequenz fréquence frecuencia frequência frequenza frequentie frekvens frekvencia frecvență frekans",
    "częstotliwość kmitočet frekvence taajuus частота συχνότητα 周波数 频率 頻率 주파수",
  ),
  standing: words("standing stehende stationnaires stationnaire stazionarie estacionaria estacionarias estacionárias"),
  wave: words("wave onde ondes onda ondas welle"),
  ratio: words("ratio rapport rapporto relación relação razón"),
  swr: words(
    "swr vswr ros roe tos coe swv sgv wfs čsv psv svf sbf sas στάσιμα кс ксв ксвн ксх άha áha ddo rus λσκ",
    "stehwellenverhältnis welligkeit staandegolfverhouding ståendevågförhållande ståendevågsförhållande",
    "standbølgeforhold ståbølgeforhold állóhullámarány 定在波比 驻波比 駐波比 정재파비 swr値",
  ),
  loss: words("loss losses verlust perte pertes perdida perda perdita pérdida pérdidas straty pierderi απώλεια kaybı"),
  return: words("return ret rückfluss retour retorno ritorno odbiciowe întoarcere επιστροφής dönüş"),
  returnLoss: words(
    "rl returnloss retloss rtnloss rloss rückflussdämpfung retourverlies returförlust returtab returtap paluuvaimennus",
    "リターンロス 回波损耗 回波損耗 반사손실",
  ),
  reflected: words(
    "reflected reflektiert reflektierte rücklaufend rücklaufende réfléchie reflejada refletida riflessa rücklauf rev rfl backward prefl pref prev pr",
  ),
  ref: words("ref"),
  power: words("power leistung puissance potencia potenza pwr p"),
  forward: words(
    "forward fwd fw incident incidente hinlaufend hinlaufende vorlauf vorwärts pfwd pf directe directa diretta",
  ),
  mismatchLoss: words("ml"),
  accepted: words(
    "accepted delivered transmitted absorbed aufgenommen aufgenommene acceptée aceptada aceita accettata",
  ),
  share: words("share fraction anteil fraction part fracción fração frazione aandeel andel squared"),
  forwardVoltage: words("vfwd vfor ufwd vinc"),
  reflectedVoltage: words("vrefl vrev urefl urev"),
  voltage: words(
    "v volt volts voltage spannung tension tensión tensão tensione spanning spänning spænding spenning 電圧 电压 전압",
  ),
  mismatch: words("mismatch fehlanpassung desadaptation désadaptation desadaptación disadattamento misaanpassing"),
  extreme: words("min max minimum maximum minimal maximal lowest highest kleinste größte mini maxi"),
  reflection: words(
    "gamma rho reflection refl rc reflexion réflexion reflexión reflexão riflessione odbicia odrazu odbicie отражения відбиття",
    "reflexionsfaktor reflectiecoëfficiënt reflektionsfaktor refleksionskoefficient refleksjonskoeffisient",
    "heijastuskerroin 反射係数 反射系数 反射係數 reflexiós yansıma reflexie ανάκλασης",
  ),
  coefficient: words(
    "coefficient coeff koeffizient faktor factor coefficiente coeficiente współczynnik činitel коэффициент",
    "коефіцієнт tényező katsayısı coeficient συντελεστής",
  ),
  impedance: words(
    "z z11 zs zin imp impedance impedanz scheinwiderstand impedancia impedância impedenza impedantie impedancja impedans",
    "impedanssi empedans impedanță импеданс імпеданс インピーダンス 阻抗 임피던스",
  ),
  admittance: words("y y11 yin admittance admittanz admittanza admitancia"),
  resistance: words(
    "r rs rser rseries rin resistance resistanz wirkwiderstand resistencia resistência resistenza weerstand rezystancja",
    "odpor resistans resistanssi ellenállás direnç rezistență 抵抗 电阻 電阻 저항",
  ),
  reactance: words(
    "x xs xser xseries xin jx reactance reaktanz blindwiderstand reactancia reatância reattanza réactance reactantie",
    "reaktancja reaktance reaktans reaktanssi reaktancia reactanță リアクタンス 电抗 電抗 리액턴스 αντίδραση",
  ),
  parallel: words("parallel par paralelo parallelo"),
  parallelResistance: words("rp rpar"),
  parallelReactance: words("xp xpar"),
  conductance: words("g gp conductance leitwert conductancia conduttanza"),
  susceptance: words("b bp susceptance suszeptanz susceptancia suscettanza"),
  real: words(
    "re real realteil réel réelle reale reëel rzeczywista reálná realdel reaaliosa действительная дійсна 実部 实部",
    "실수부 valós gerçek reală πραγματικό",
  ),
  imaginary: words(
    "im imag imaginary imaginär imaginärteil imaginaire imaginaria imaginária immaginaria imaginair urojona imaginární",
    "imaginärdel imaginærdel imaginaariosa мнимая уявна 虚部 허수부 képzetes sanal imaginară φανταστικό",
  ),
  magnitude: words(
    "mag mg magnitude unsigned abs size absolute lin linmag linear betrag module módulo modulo modulus moduł modul belopp itseisarvo модуль",
    "絶対値 幅度 크기 genlik μέτρο",
  ),
  angle: words(
    "phase ang angle theta ph arg phi winkel phasenwinkel fase ángulo ângulo faza fáze fas vaihe фаза 位相 相位 위상",
    "fázis faz fază φάση",
  ),
  degrees: words("deg degree degrees grad °"),
  radians: words("rad radian radians"),
  milliradians: words("mrad milliradian milliradians"),
  turns: words("turn turns rev revolutions"),
  gons: words("gon gons gradian gradians"),
  decibel: words("db logmag log дб"),
  ohm: words("ohm ohms ом"),
  kiloohm: words("kohm kohms"),
  siemens: words("s siemens mho"),
  millisiemens: words("ms millisiemens mmho"),
  microsiemens: words("us microsiemens umho"),
  percent: words("% percent prozent"),
  watts: words("w watt watts mw"),
  /** Words that say nothing about what the column holds */
  filler: words(
    "mean avg average mittel mittelwert moyenne media médio medio complex cplx",
    "data formatted measured meas value values ant antenna series trace channel sign unwrapped u",
    "du by from of the at on to na vid do ad au aux in input della dal von des den vom de di des da partie parte part deel część część část del μέρος kısım rész часть частина",
  ),
} as const satisfies Record<string, readonly string[]>;

/** What a word of a header may mean. */
export type Meaning = keyof typeof WORDS | "transmission" | "other-port" | "unknown";

/** A word as it is compared: small letters, no accents. */
function plainWord(word: string): string {
  return withoutAccents(word).toLowerCase();
}

function words(...lines: readonly string[]): readonly string[] {
  return lines.flatMap((line) => line.split(" ").map(plainWord));
}
