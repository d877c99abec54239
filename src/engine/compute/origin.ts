import type { Problem } from '../../diagnostics/index.ts';
import type { Root } from './cause.ts';

/**
 * Where the lack of a value begins, in words; `because` says what is wrong there, or that it is blank; `uncovered` that
 * nothing is wrong there, for the formula says nothing for the case there is.
 */
export interface Origin {
  readonly name: string;
  readonly because: string;
  readonly blank: boolean;
  readonly uncovered?: true;
}

/** The origin behind a root: an aggregate over a row that fails is sound itself, and knows where the row's failing begins. */
export function originOf(root: Root, blankWords: (root: Root) => string): Origin {
  const name = placeName(root.cell.id, root.row);
  if (root.kind === 'blank') return { name, because: blankWords(root), blank: true };
  return originBehind(root.problem) ?? { name, ...originItself(root.problem) };
}

/** Of these problems nothing is wrong with the formula: it says nothing for the case there is. */
const UNCOVERED: ReadonlySet<Problem['code']> = new Set(['no-branch', 'no-row-meets']);

/** What a problem says of the place where it stands, as the place where the lack of a value begins. */
export function originItself({ code, message }: Problem): Omit<Origin, 'name'> {
  return { because: message, blank: false, ...(UNCOVERED.has(code) && { uncovered: true }) };
}

/** Where the failing that a problem only passes on begins; undefined where it begins with the problem itself. */
export function originBehind({ code, message, data }: Problem): Origin | undefined {
  if (code === 'rows-blank') {
    const [first] = data.blanks as unknown as readonly { readonly cell: string; readonly row: number }[];
    return first && { name: placeName(first.cell, first.row - 1), because: message, blank: true };
  }
  if (code === 'key-not-found') {
    const { entered, enteredRow } = data;
    if (typeof entered !== 'string') return undefined;
    const row = typeof enteredRow === 'number' ? enteredRow - 1 : undefined;
    return { name: placeName(entered, row), because: message, blank: false };
  }
  const { origin, because, blank, uncovered } = data;
  if ((code !== 'aggregate-row-fails' && code !== 'waits-on') || typeof origin !== 'string' || origin === '')
    return undefined;
  return {
    name: origin,
    because: typeof because === 'string' && because !== '' ? because : message,
    blank: blank === true,
    ...(uncovered === true && { uncovered }),
  };
}

function placeName(id: string, row: number | undefined): string {
  return row === undefined ? id : `row ${row + 1} of ${id}`;
}
