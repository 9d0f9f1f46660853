/**
 * Words of header cells by meaning. English and the trade's own signs first, then those of other languages (from memory, no
 * source), with accents as their languages write them: they are compared without.
 */
export const WORDS = {
  frequency: words(
    "freq frequency frq f hz khz mhz ghz",
    "frequenz fréquence frecuencia frequência frequenza frequentie frekvens frekvencia frecvență frekans",
    "częstotliwość kmitočet frekvence taajuus частота συχνότητα 周波数 频率 頻率 주파수",
  ),
  standing: words("standing stehende stationnaires stationnaire stazionarie estacionaria estacionarias estacionárias"),
  wave: words("wave onde ondes onda ondas welle"),
  ratio: words("ratio rapport rapporto relación relação razón"),
  swr: words(
    "swr vswr ros roe tos swv sgv wfs čsv psv svf sbf sas кс ксв ксвн ксх άha áha ddo rus λσκ",
    "stehwellenverhältnis welligkeit staandegolfverhouding ståendevågförhållande ståendevågsförhållande",
    "standbølgeforhold ståbølgeforhold állóhullámarány 定在波比 驻波比 駐波比 정재파비 swr値",
  ),
  loss: words("loss losses verlust perte pertes perdida perda perdita pérdida pérdidas straty pierderi απώλεια kaybı"),
  return: words("return ret rückfluss retour retorno ritorno odbiciowe întoarcere επιστροφής dönüş"),
  returnLoss: words(
    "rl returnloss rtnloss rückflussdämpfung retourverlies returförlust returtab returtap paluuvaimennus",
    "リターンロス 回波损耗 回波損耗 반사손실",
  ),
  reflected: words("reflected reflektiert réfléchie reflejada refletida riflessa"),
  power: words("power leistung puissance potencia potenza pwr"),
  reflection: words(
    "gamma rho reflection refl rc reflexion réflexion reflexión reflexão riflessione odbicia odrazu отражения відбиття",
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
    "mag mg magnitude abs lin linmag linear betrag module módulo modulo modulus moduł modul belopp itseisarvo модуль",
    "絶対値 幅度 크기 genlik μέτρο",
  ),
  angle: words(
    "phase ang angle theta ph arg phi winkel phasenwinkel fase ángulo ângulo faza fáze fas vaihe фаза 位相 相位 위상",
    "fázis faz fază φάση",
  ),
  degrees: words("deg degree degrees grad °"),
  radians: words("rad radian radians"),
  gons: words("gon gons gradian gradians"),
  decibel: words("db logmag log"),
  ohm: words("ohm ohms ом"),
  kiloohm: words("kohm kohms"),
  siemens: words("s siemens mho"),
  millisiemens: words("ms millisiemens mmho"),
  microsiemens: words("us microsiemens umho"),
  percent: words("% percent prozent"),
  /** Words that say nothing about what the column holds */
  filler: words(
    "data formatted measured meas value values ant antenna series smith trace channel voltage sign unwrapped u",
    "of the at in input de di des da d partie parte part deel część część část del μέρος kısım rész часть частина",
  ),
} as const satisfies Record<string, readonly string[]>;

/** A word as it is compared: small letters, no accents. */
function plainWord(word: string): string {
  return word.replace(/[ßẞ]/g, "ss").normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
}

function words(...lines: readonly string[]): readonly string[] {
  return lines.flatMap((line) => line.split(" ").map(plainWord));
}
