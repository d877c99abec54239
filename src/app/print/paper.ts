/** A size of paper: its name in CSS, and the height within the margins in px. */
export interface Paper {
  readonly size: 'A4' | 'Letter';
  readonly height: number;
}

/** The px of a millimetre and of an inch. */
const [MM, INCH] = [96 / 25.4, 96];

/** The margins at the head and at the foot of a page in px. */
const MARGINS = 28 * MM;

/** The px across a page within its margins, the same on each paper. */
export const PAPER_WIDTH = 700;

/** ISO 216 and ANSI/ASME Y14.1. */
export const papers: readonly Paper[] = [
  { size: 'A4', height: 297 * MM - MARGINS },
  { size: 'Letter', height: 11 * INCH - MARGINS },
];

/** The paper that offices use where a language of this name is spoken: Letter in North America and where it is sold. */
export function usualPaper(locale: string): Paper['size'] {
  return /-(US|CA|MX|PH|CL|CO|VE)\b/i.test(locale) ? 'Letter' : 'A4';
}
