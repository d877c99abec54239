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

/**
 * Signs of full width and digits of other scripts, as some keyboards write them, as the ordinary ones, and none that cannot
 * be seen. The decimal sign of Arabic print becomes a point, that between its thousands an apostrophe.
 */
export function ordinarySigns(written: string): string {
  if (!/[^\0-\xff]/.test(written)) return written;
  // Persian print has a slash in front of decimals, too: such a number can be read two ways.
  if (/[\u06f0-\u06f9\u0660-\u0669]\s*\/\s*[\u06f0-\u06f9\u0660-\u0669]/.test(written)) return written;
  return written
    .replace(UNSEEN, '')
    .replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    .replace(FOREIGN_DIGITS, digitOf)
    .replace(/(?<=\d)[\u066b\u066c]|\u066a/g, (sign) => ARABIC_SIGNS[sign] ?? sign);
}

/** Signs that stand in numbers of Arabic print beside its digits. */
const ARABIC_SIGNS: Readonly<Record<string, string>> = { '\u066b': '.', '\u066c': "'", '\u066a': '%' };

/** The zeros of scripts with decimal digits of their own, each followed by its 1 to 9: Arabic, Persian, Indian, Thai and more. */
const ZEROS = [
  0x660, 0x6f0, 0x7c0, 0x966, 0x9e6, 0xa66, 0xae6, 0xb66, 0xbe6, 0xc66, 0xce6, 0xd66, 0xe50, 0xed0, 0xf20,
  0x1040, 0x17e0, 0x1810,
];

const FOREIGN_DIGITS = new RegExp(
  `[${ZEROS.map((zero) => `${String.fromCharCode(zero)}-${String.fromCharCode(zero + 9)}`).join('')}]`,
  'g',
);

function digitOf(sign: string): string {
  const code = sign.charCodeAt(0);
  const zero = ZEROS.findLast((one) => one <= code) ?? code;
  return `${code - zero}`;
}
