import { once } from "../../numbers/once.js";
import { withoutAccents } from "./name-words.js";

/**
 * Words of header cells by meaning. English and the trade's own signs first, then those of other languages (from memory, no
 * source), with accents as their languages write them: they are compared without.
 */
const WORDS = {
  frequency: [
    "freq frequency frequencies freqs frq f hz khz mhz ghz гц кгц мгц ггц kc kcs mc mcs kilocycles megacycles",
    "frequenzen fréquences frecuencias frequências frequenze frequenties frekvenser frekvence frekvenciák frecvențe",
    "częstotliwości kmitočty taajuudet частоты частоти συχνότητες frekanslar częst kmit част συχν",
    "frequenz qrg fréquence frecuencia frequência frequenza frequentie frekvens frekvencia frecvență frekans",
    "częstotliwość kmitočet frekvence taajuus частота честота učestalost frekvencija συχνότητα 周波数 频率 頻率 주파수",
  ],
  standing: ["standing stehende stationnaires stationnaire stazionarie estacionaria estacionarias estacionárias"],
  wave: ["wave onde ondes onda ondas welle"],
  ratio: ["ratio rapport rapporto relación relação razón"],
  swr: [
    "swr vswr ros roe tos coe swv sgv wfs čsv psv svf sbf sas στάσιμα кс ксв ксвн ксх άha áha ddo rus λσκ",
    "stehwellenverhältnis welligkeit staandegolfverhouding ståendevågförhållande ståendevågsförhållande",
    "standbølgeforhold ståbølgeforhold állóhullámarány 定在波比 驻波比 駐波比 정재파비 swr値",
  ],
  loss: ["loss losses verlust perte pertes perdida perda perdita pérdida pérdidas straty pierderi απώλεια kaybı"],
  return: ["return ret rückfluss retour retorno ritorno odbiciowe întoarcere επιστροφής dönüş"],
  returnLoss: [
    "rl rfd returnloss retloss rtnloss rloss rückflussdämpfung retourverlies returförlust returtab returtap paluuvaimennus",
    "リターンロス 回波损耗 回波損耗 반사손실",
  ],
  reflected: [
    "reflected reflektiert reflektierte rücklaufend rücklaufende réfléchie reflejada refletida riflessa rücklauf rev rfl backward prefl pref prev pr heijastunut обратная обратной зворотна odražená odražený reflekteret reflekterad",
  ],
  ref: ["ref"],
  power: ["power leistung puissance potencia potenza pwr p"],
  forward: [
    "forward fwd fw incident incidente hinlaufend hinlaufende vorlauf vorwärts pfwd pf directe directa diretta direta etenevä прямая прямой пряма incidentní dopadající frem framåt",
  ],
  mismatchLoss: ["ml anpassungsverlust anpassungsverluste fehlanpassungsverlust fehlanpassungsdämpfung"],
  accepted: ["accepted delivered transmitted absorbed aufgenommen aufgenommene acceptée aceptada aceita accettata"],
  share: ["share fraction anteil fraction part fracción fração frazione aandeel andel squared"],
  forwardVoltage: ["vfwd vfor ufwd vinc vf uf"],
  reflectedVoltage: ["vrefl vrev urefl urev vr ur"],
  voltage: [
    "v u volt volts voltage spannung tension tensión tensão tensione spanning spänning spænding spenning 電圧 电压 전압",
  ],
  mismatch: ["mismatch fehlanpassung desadaptation désadaptation desadaptación disadattamento misaanpassing"],
  extreme: ["min max minimum maximum minimal maximal lowest highest kleinste größte mini maxi"],
  reflection: [
    "gamma rho reflection refl rc reflexion réflexion reflexión reflexão riflessione odbicia odrazu odbicie отражения відбиття",
    "reflexionsfaktor reflectiecoëfficiënt reflektionsfaktor refleksionskoefficient refleksjonskoeffisient",
    "heijastuskerroin 反射係数 反射系数 反射係數 reflexiós yansıma reflexie ανάκλασης",
  ],
  coefficient: [
    "coefficient coeff koeffizient faktor factor coefficiente coeficiente współczynnik činitel коэффициент",
    "коефіцієнт tényező katsayısı coeficient συντελεστής",
  ],
  impedance: [
    "z z11 zs zin imp impedance impedanz scheinwiderstand impedancia impedância impedenza impedantie impedancja impedans",
    "impedanssi empedans impedanță импеданс імпеданс インピーダンス 阻抗 임피던스",
  ],
  admittance: ["y y11 yin admittance admittanz admittanza admitancia"],
  resistance: [
    "r rs rser rseries rin esr resistance resistanz wirkwiderstand resistencia resistência resistenza weerstand rezystancja активное",
    "odpor resistans resistanssi ellenállás direnç rezistență 抵抗 电阻 電阻 저항 otpor oporność",
  ],
  reactance: [
    "x xs xser xseries xin jx reactance reaktanz blindwiderstand reactancia reatância reattanza réactance reactantie",
    "reaktancja reaktance reaktans reaktanssi reaktancia reactanță リアクタンス 电抗 電抗 리액턴스 αντίδραση reaktancija",
  ],
  parallel: ["parallel par paralelo parallelo"],
  parallelResistance: ["rp rpar"],
  parallelReactance: ["xp xpar"],
  conductance: ["g gp conductance leitwert conductancia conduttanza"],
  susceptance: ["b bp susceptance suszeptanz susceptancia suscettanza"],
  real: [
    "re real realteil réel réelle reale reëel rzeczywista reálná realdel reaaliosa действительная дійсна 実部 实部",
    "실수부 valós gerçek reală πραγματικό",
  ],
  imaginary: [
    "im imag imaginary imaginär imaginärteil imaginaire imaginaria imaginária immaginaria imaginair urojona imaginární",
    "imaginärdel imaginærdel imaginaariosa мнимая уявна 虚部 허수부 képzetes sanal imaginară φανταστικό",
  ],
  magnitude: [
    "mag mg magnitude unsigned abs size absolute lin linmag linear betrag module módulo modulo modulus moduł modul belopp itseisarvo модуль",
    "絶対値 幅度 크기 genlik μέτρο numerisk absoluttverdi",
  ],
  angle: [
    "phase ang angle theta ph arg phi winkel phasenwinkel fase ángulo ângulo faza fáze fas vaihe фаза 位相 相位 위상",
    "fázis faz fază φάση",
  ],
  degrees: ["deg degree degrees grad °"],
  radians: ["rad radian radians"],
  milliradians: ["mrad milliradian milliradians"],
  turns: ["turn turns rev revolutions"],
  gons: ["gon gons gradian gradians"],
  decibel: ["db logmag log дб"],
  ohm: ["ohm ohms om ом"],
  kiloohm: ["kohm kohms kiloohm kiloohms kilohm kilohms"],
  siemens: ["s siemens mho"],
  millisiemens: ["ms millisiemens mmho"],
  microsiemens: ["us microsiemens umho"],
  percent: ["% percent pct prozent"],
  capacitance: ["cs cser capacitance kapazität capacité capacidad capacità"],
  inductance: ["ls lser inductance induktivität"],
  picofarads: ["picofarad picofarads"],
  nanofarads: ["nanofarad nanofarads"],
  nanohenries: ["nh"],
  microhenries: ["uh"],
  watts: ["w watt watts"],
  milliohm: ["milliohm milliohms"],
  milliwatts: ["mw milliwatt milliwatts"],
  millivolts: ["mv millivolt millivolts"],
  dbm: ["dbm"],
  /** Words that say nothing about what the column holds */
  filler: [
    "mean avg average mittel mittelwert moyenne media médio medio complex cplx",
    "data formatted measured meas value values ant antenna series trace channel sign unwrapped u",
    "feed point feedpoint input terminal polar rectangular cartesian van der das het la le los av af til för της του",
    "du by from of the at on to na vid do ad au aux in input della dal von des den vom de di des da partie parte part deel część część část del μέρος kısım rész часть частина",
  ],
} as const satisfies Record<string, readonly string[]>;

/** What a word of a header may mean. */
export type Meaning = keyof typeof WORDS | "transmission" | "other-port" | "unknown";

/** Words as they are compared: small letters, no accents. */
const plainly = (words: string): string => withoutAccents(words).toLowerCase();

/** What each word means, as it is compared. */
export const meaningsOfWords = once(
  (): ReadonlyMap<string, Meaning> =>
    new Map(
      (Object.keys(WORDS) as (keyof typeof WORDS)[]).flatMap((meaning) =>
        WORDS[meaning].flatMap((line) =>
          plainly(line)
            .split(" ")
            .map((word) => [word, meaning] as const),
        ),
      ),
    ),
);
