/** Texts as whole numbers, so that the grid compares numbers only: equal texts have one code, and codes sort as texts. */
export interface TextCodes {
  /** The code of a text, from 1. Throws on a text that was not collected. */
  readonly codeOf: (text: string) => number;
  /** The normal form of the text of a code; undefined for a number that is none. */
  readonly textOf: (code: number) => string | undefined;
}

/** The form in which texts are compared: composed, without case (upper first, so that ß is SS), without outer spaces. */
function normalForm(text: string): string {
  return text.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
}

/** Codes for all texts of a book. */
export function textCodes(texts: Iterable<string>): TextCodes {
  // The default order of sort compares code units, which is the language's order of texts.
  const sorted = [...new Set(Array.from(texts, normalForm))].sort();
  const codes = new Map(sorted.map((text, at) => [text, at + 1]));
  return {
    codeOf: (text) => {
      const code = codes.get(normalForm(text));
      if (code === undefined) throw new Error(`the text "${text}" has no code`);
      return code;
    },
    textOf: (code) => sorted[code - 1],
  };
}
