/** Marks of the direction of writing and of no width, which stand around numbers unseen. */
const UNSEEN = /[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g;

/** Brackets of Chinese and Japanese print, and units that are one sign. */
const BRACKETS: Readonly<Record<string, string>> = {
  '【': '[',
  '】': ']',
  '〔': '(',
  '〕': ')',
  '｢': '[',
  '｣': ']',
  '「': '[',
  '」': ']',
};

/** A heading as it would be written with ordinary signs: brackets, signs of full width, units that are one sign as `㎥`. */
export function ordinaryHeading(written: string): string {
  return ordinarySigns(written.replace(/[【】〔〕｢｣「」]/g, (sign) => BRACKETS[sign] ?? sign)).replace(
    /[\u3380-\u33df]/g,
    (sign) => sign.normalize('NFKC'),
  );
}

/** Signs of full width, as some keyboards write them, as the ordinary ones, and none that cannot be seen. */
export function ordinarySigns(written: string): string {
  const text = written.replace(UNSEEN, '');
  return /[\uff01-\uff5e]/.test(text)
    ? text.replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    : text;
}
