/** The call whose parentheses stand open at a place of a formula; the name is empty for a plain group. */
export interface OpenCall {
  readonly name: string;
  /** The argument the place is in, from 0. */
  readonly argument: number;
  /** Where that argument begins. */
  readonly from: number;
  /** Where the first argument begins. */
  readonly start: number;
}

/** Where a place of a formula stands: in which call, and whether inside quotation marks (and from where on). */
export interface Standing {
  readonly call: OpenCall | undefined;
  readonly quote: number | undefined;
}

/** Reads a formula up to `at`, however unfinished it is. */
export function standingAt(text: string, at: number): Standing {
  const open: OpenCall[] = [];
  let quote: number | undefined;
  for (let i = 0; i < at; i += 1) {
    const sign = text[i];
    if (sign === '"') quote = quote === undefined ? i : undefined;
    if (quote !== undefined) continue;
    const top = open.at(-1);
    if (sign === '(') open.push({ name: wordBefore(text, i), argument: 0, from: i + 1, start: i + 1 });
    else if (sign === ')') open.pop();
    else if (top && (sign === ';' || (sign === ',' && !/\d/.test(text[i + 1] ?? ''))))
      open[open.length - 1] = { ...top, argument: top.argument + 1, from: i + 1 };
  }
  return { call: open.at(-1), quote };
}

function wordBefore(text: string, at: number): string {
  return /[\p{L}][\p{L}\d_'.]*$/u.exec(text.slice(0, at))?.[0] ?? '';
}
