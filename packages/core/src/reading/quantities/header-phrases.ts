import { once } from "../../numbers/once.js";
import { withoutAccents, wordsOf } from "./name-words.js";

/**
 * What two words mean together in a header, where each by itself means something else; as the trade's own sign for it. From
 * memory, no source.
 */
const PHRASES: Readonly<Record<string, string>> = {
  rl: "return flow attenuation|pertes par réflexion|perte par réflexion|pertes en retour|perte en retour|pierderi prin reflexie|pierdere prin reflexie|gubitak povrata|povratni gubici|povratni gubitak|suy hao phản hồi|pérdidas por reflexión|perdas por reflexão",
  reflected: "coming back|that comes back|returned",
  vrefl: "v refl|refl v|u refl|refl volts|volts refl",
  accepted: "into the antenna|into antenna|going out",
  swr: "λόγος στασίμων|odnos stojećih valova|odnos stojnih valova",
  unsigned: "without sign|without its sign|no sign|sign lost",
  z: "σύνθετη αντίσταση|σύνθετης αντίστασης|полное сопротивление|полного сопротивления|комплексное сопротивление|повний опір|повного опору",
  r: "r ser|r активное|r активний|активний r|active part|активное r|акт сопр|активное сопр|активное сопротивление|активний опір|ωμική αντίσταση|činný odpor|oporność czynna|résistance série|r série|активно съпротивление",
  x: "x ser|x реактивное|x реактивний|reactive part|реактивное сопр|реакт сопр|реактивное сопротивление|реактивний опір|реакт сопротивление|реакт опір|άεργη αντίσταση|άεργος αντίσταση|jalový odpor|meddő ellenállás|oporność bierna|réactance série|x série|реактивно съпротивление",
};

/** Made when they are asked for first, as the tables below: a Touchstone file has no use for them. */
const replaced = once(() =>
  Object.entries(PHRASES).flatMap(([sign, phrases]) =>
    withoutAccents(phrases)
      .split("|")
      .map((phrase) => [` ${phrase} `, ` ${sign} `] as const),
  ),
);

/** Signs of languages that put no blanks between words, by meaning, as words that mean the same. */
const SIGNS: Readonly<Record<string, string>> = {
  frequency: "周波数 频率 頻率 주파수",
  mhz: "兆赫 兆赫兹 兆赫茲 メガヘルツ 메가헤르츠",
  khz: "千赫 千赫兹 キロヘルツ 킬로헤르츠",
  ghz: "吉赫 千兆赫 ギガヘルツ 기가헤르츠",
  hz: "赫兹 赫茲 赫 ヘルツ 헤르츠",
  swr: "定在波比 驻波比 駐波比 定在波 驻波 駐波 정재파비 정재파",
  rl: "リターンロス 리턴로스 回波损耗 回波損耗 反射損失 反射减衰量 反射減衰量 反射损耗 반사손실 반사감쇠량",
  gamma: "反射 반사",
  coefficient: "係数 系数 係數 계수",
  power: "電力 功率 전력",
  return: "回波 リターン 리턴",
  loss: "損失 损耗 損耗 손실 ロス 로스",
  z: "インピーダンス 阻抗 임피던스",
  r: "レジスタンス 抵抗 电阻 電阻 저항",
  x: "リアクタンス 电抗 電抗 리액턴스",
  re: "実部 实部 實部 実数部 실수부 실부",
  im: "虚部 虛部 虚数部 허수부 허부",
  mag: "大きさ 絶対値 幅值 幅度 绝对值 絕對值 模值 크기 절대값 절댓값 진폭 振幅",
  angle: "位相角 相位角 位相 相位 相角 위상각 위상 角度 각도 角",
  ohm: "オーム 欧姆 歐姆 欧 옴",
  deg: "度 도",
  db: "デシベル 分贝 分貝 데시벨",
  percent: "パーセント 百分比 퍼센트",
  ratio: "比 비 비율",
  voltage: "電圧 电压 전압",
  value: "の 之 值 値 값 의 部分",
};
const wordOfSign = once(
  () =>
    new Map(
      Object.entries(SIGNS).flatMap(([word, signs]) =>
        signs.split(" ").map((sign) => [withoutAccents(sign), word] as const),
      ),
    ),
);
const longestSign = once(() => Math.max(...[...wordOfSign().keys()].map((sign) => sign.length)));
const signs = once(() => /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u);

/** A word of such a language as those that it is made of, the longest first. */
function parted(word: string): readonly string[] {
  if (/^[a-z]*$/.test(word) || !signs().test(word)) return [word];
  const parts: string[] = [];
  for (let i = 0; i < word.length; ) {
    // Letters of a sign beside them: "抵抗R".
    const letters = /^[a-z]+/.exec(word.slice(i))?.[0];
    if (letters !== undefined) {
      parts.push(letters);
      i += letters.length;
      continue;
    }
    let length = Math.min(longestSign(), word.length - i);
    while (length > 0 && !wordOfSign().has(word.slice(i, i + length))) length--;
    if (length === 0) return [word];
    parts.push(wordOfSign().get(word.slice(i, i + length)) as string);
    i += length;
  }
  return parts;
}

/** The words of a header, with the trade's sign in the place of several that mean it together. */
export function signedWordsOf(header: string): readonly string[] {
  const words = wordsOf(header).flatMap(parted);
  let text = ` ${words.join(" ")} `;
  for (const [phrase, sign] of replaced()) text = text.replaceAll(phrase, sign);
  return text.trim().split(" ");
}
