/** Signs without width or shape: soft hyphen, zero-width space, word joiner, byte order mark within, marks of direction. */
const UNSEEN = /[\u00ad\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]/g;

/** Those of them that are not needed by any script. */
const NEEDED_BY_NONE = /[\u00ad\u180e\u200b\u2060-\u2064\ufeff]/g;

/** Scripts that joiners or marks of direction are part of, and pictures that are joined. */
const NEEDS_SIGNS =
  /[\u0590-\u08ff\u0900-\u0dff\u0e00-\u109f\u1780-\u17ff\ufb1d-\ufdff\ufe70-\ufefc]|\p{Extended_Pictographic}/u;

/** The signs of a text that cannot be seen and are left out of it. */
export interface UnseenSigns {
  readonly count: number;
  /** Which they are, as Unicode numbers them: `U+200B`. */
  readonly signs: readonly string[];
  /** The lines they stand in, counted from 1. */
  readonly lines: readonly number[];
}

/**
 * A text without the signs that cannot be seen: a word with one is another than the same word without, and looks alike.
 * In lines of scripts that need joiners or marks of direction these stay.
 */
export function withoutUnseen(text: string): { readonly text: string; readonly unseen: UnseenSigns } {
  if (text.search(UNSEEN) < 0) return { text, unseen: { count: 0, signs: [], lines: [] } };
  const signs = new Set<string>();
  const lines: number[] = [];
  let count = 0;
  const clean = text.split('\n').map((line, at) =>
    line.replace(NEEDS_SIGNS.test(line) ? NEEDED_BY_NONE : UNSEEN, (sign) => {
      count += 1;
      signs.add(`U+${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`);
      if (lines.at(-1) !== at + 1) lines.push(at + 1);
      return '';
    }),
  );
  return { text: clean.join('\n'), unseen: { count, signs: [...signs].toSorted(), lines } };
}
