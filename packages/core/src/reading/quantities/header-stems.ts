import { once } from "../../numbers/once.js";
import type { Meaning } from "./header-words.js";

/**
 * Beginnings of words by meaning ("$" behind a whole word), for the forms that inflection, abbreviation and composition give them: "impedansens", "frekv.",
 * "Reflexionsfaktors", "Standwellenverhältnis". Without accents and in small letters, in the languages that headers are known
 * in; from memory, no source.
 */
const STEMS: Readonly<Partial<Record<Meaning, string>>> = {
  frequency: "freq frek frec taaj czest kmit част συχν messfreq messfrek messfrec pruffreq pruffrek pruffrec",
  swr: "stehwell standbolge staendebolge stabolge staendewell staandegolf standevag staendevag stavag allohullamar welligk seisovanaal",
  standing:
    "stehend stationna stazionar estacion stationa staand staend stand stojat stojac стояч στασιμ allo$ duran seiso",
  wave: "welle wave ondas$ onda$ ondes$ onde$ golf golv vln fala$ fali$ fal$ волн хвил κυμα hullam dalga undel unde undl und aalto aallo bolge vag",
  ratio:
    "taux verhoud verhalt forhold forhall suhde pomer stosun отнош відн λογο oran raport rapport relac razon arany",
  return: "ruckfl rucklauf retour retur zpetn powrotn обратн возврат зворотн επιστροφ donus geri$ intoarc paluu",
  loss: "verlus perte perdid perdit perda dampf dampn demp utlum strat ztrat tlumien vaimenn havio потер втрат затух загас απωλει kayb kayip pierder csillap veszteseg tab$ tap$ verlies forlust affaibl attenua atenua",
  returnLoss:
    "ruckflussd rucklaufd reflexionsd retourverl returforl returdamp returtab returtap returdemp refleksionst refleksjonst reflektionsd reflectiev reflectied retourd paluuvaim heijastusvaim anpassningsd",
  reflected: "rucklauf gereflect",
  power:
    "leistung puissan potenc potenz effekt teho vykon puter teljesitmen guc ισχυ мощност потужн vermogen moc$ moci$",
  reflection: "reflek reflex reflec reflet rifless heijast odraz odbic odbit отраж відб ανακλ yans visszaver",
  coefficient: "coef koef faktor fattor facteur kerto wsp cinitel коэф коеф συντελ katsay egyuttha tenyez",
  impedance: "impedan impeden empedan импеданс імпеданс εμπεδησ scheinwid",
  admittance: "admitt admit адмитт адміт",
  resistance:
    "resist rezist wirkwid widerst weerst odpor ellenall direnc modstand motstand vastus αντιστασ сопр съпр опор отпор",
  reactance: "reakt reactan reatan reatt blindwid реакт αντιδρασ",
  conductance: "conduct kondukt leitw проводим провідн",
  susceptance: "suscept suszept suscett",
  real: "reell reel real reaal rzeczyw действит веществ дійсн πραγματ valos gerc",
  imaginary: "imag urojon мним уявн φανταστ kepzet sanal",
  magnitude:
    "magnit betrag belop storrel velikost itseisarv suuruu μετρ modul buyuklu absol abszol assolut απολυτ абсолют mutlak nagysag groott grosse модул amplitud bezwzgl genlig genlik",
  angle:
    "winkel phas fase fasv faz hoek kat$ vinkel angle angol angul uhel acisi$ aci$ kulma ungh γωνι φασ szog угол угл фаз кут vaihe argum",
  decibel: "decibel dezibel децибел ντεσιμπελ desibel",
  percent: "percent prozent процент відсот ποσοστ yuzde procent prosent",
  degrees: "degre grad stup stopn град μοιρ derece fok aste",
  ohm: "ohm омов ом$",
  filler:
    "hodnot wartosc значен ertek deger valoar valeur valor verdi vardi vaerdi waarde wert arvo τιμη mess mierzon messwert prumer srednia средн серед snitt gemiddel keskiarv ortalama atlag media$ medio$",
};

/** Each beginning with what it means; "$" behind one stands for the end of the word. */
const stems = once(() =>
  Object.entries(STEMS).flatMap(([meaning, list]) =>
    list.split(" ").map((stem) => ({
      start: stem.replace("$", ""),
      isWhole: stem.endsWith("$"),
      meaning: meaning as Meaning,
    })),
  ),
);
/** Words shorter than this are known as they are, or not. */
const SHORTEST = 3;

/** What a word means by its beginning: the longest of those that fit. */
export function meaningByStem(word: string): Meaning | null {
  if (word.length < SHORTEST) return null;
  let best: Meaning | null = null;
  let length = 0;
  for (const { start, isWhole, meaning } of stems()) {
    if (start.length <= length || !word.startsWith(start) || (isWhole && word !== start)) continue;
    best = meaning;
    length = start.length;
  }
  return best;
}
