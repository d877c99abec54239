/**
 * Texts as numbers, so that a text value fits where every other value is: each exact text has one code, and each
 * code leads to the code of its normal form. Two texts are equal when their normal forms are.
 */
export interface TextPool {
  /** The code of an exact text; the same text always has the same code. */
  readonly codeOf: (text: string) => number;
  /** The exact text of a code; throws on a number that is none. */
  readonly textOf: (code: number) => string;
  /** The code of the normal form of a text given by its code; NaN for NaN. */
  readonly normalOf: (code: number) => number;
}

/** The form in which texts are compared: composed (NFC), without case, without outer spaces. */
function normalText(text: string): string {
  // Upper case first, so that letters with two small forms (ß, ς) fold together.
  return text.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').trim();
}

/** An empty pool. */
export function createTextPool(): TextPool {
  const texts: string[] = [];
  const normals: number[] = [];
  const codes = new Map<string, number>();

  const codeOf = (text: string): number => {
    const known = codes.get(text);
    if (known !== undefined) return known;
    const code = texts.length;
    codes.set(text, code);
    texts.push(text);
    const normal = normalText(text);
    normals.push(code);
    if (normal !== text) normals[code] = codeOf(normal);
    return code;
  };

  return {
    codeOf,
    textOf: (code) => {
      const text = texts[code];
      if (text === undefined) throw new RangeError(`no text has the code ${code}`);
      return text;
    },
    normalOf: (code) => normals[code] ?? Number.NaN,
  };
}
