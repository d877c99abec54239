/** Characters people paste, and the one the readers know in their place. One for one, so offsets keep. */
const LOOK_ALIKES: ReadonlyMap<string, string> = new Map([
  ['\u00b5', 'μ'], // micro sign
  ['\u2126', 'Ω'], // ohm sign
  ['\u2206', 'Δ'], // increment
  ['\u00ba', '°'], // ordinal indicator
  ['\u02da', '°'], // ring above
  ...pairs("′’‘ʹʼ´`'", "'"),
  ...pairs('″”“ʺ', '"'),
  ...pairs('×∙⋅•‧∗', '·'),
  ...pairs('−–—‐‑‒﹣-', '-'),
  ...pairs('+', '+'),
  ...pairs('⁄∕', '/'),
  // Spaces of all widths, and characters that show nothing.
  ...pairs(
    '\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000',
    ' ',
  ),
  ...pairs('\t\n\r\u200b\u200c\u200d\u2060\ufeff', ' '),
]);

const MAY_HOLD_LOOK_ALIKES = /[^\x20-\x5f\x61-\x7e]/;

/** The text with look-alike characters replaced by the one meant; every offset stays where it was. */
export function normaliseLookAlikes(text: string): string {
  if (!MAY_HOLD_LOOK_ALIKES.test(text)) return text;
  let result = '';
  for (let i = 0; i < text.length; i++) {
    const character = text.charAt(i);
    result += LOOK_ALIKES.get(character) ?? character;
  }
  return result;
}

function pairs(from: string, to: string): [string, string][] {
  return Array.from(from, (character) => [character, to]);
}
