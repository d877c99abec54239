import { fail, type Outcome, problem, succeed } from '../../diagnostics/index.ts';
import type { Edit } from '../../document/index.ts';
import {
  type Notebook,
  openNotebook,
  shareOf,
  tryEntry,
  type Verdict,
  verdictWord,
  writeUtilisation,
} from '../../notebook/index.ts';
import { type FoundCheck, findingsOf } from '../../record/index.ts';
import { numberInPrint } from '../../units/index.ts';
import { enterText } from '../editing/cells/cell-edits.ts';
import type { CellPlace } from '../view-model/place.ts';

/** Another value tried for a line, beside the book: a second notebook computes what would follow, the book stays as it is. */
export interface ValueTrial {
  /** The value cell of the line. */
  readonly place: CellPlace;
  readonly id: string;
  /** The entry tried. */
  readonly entry: string;
  /** What keeping it does to the book. */
  readonly edit: Edit;
  /** The book as it would be. */
  readonly notebook: Notebook;
}

/** A check that a trial moves: how it stands in the book, and how it would. */
export interface MovedCheck {
  readonly check: FoundCheck;
  readonly before: string;
  readonly after: string;
  /** Whether it holds with the value tried; undefined where it would have no value. */
  readonly holds: boolean | undefined;
  /** Whether it would rest on values beyond their permitted ranges. */
  readonly isBeyond: boolean;
  /** Whether its verdict changes, not only its utilisation. */
  readonly turns: boolean;
}

/** A second notebook on so many cells of tables takes a moment; on more of them the page would stand still. */
export const TRIAL_CELL_LIMIT = 50_000;

/** How many cells the tables of a book have. */
export function tableCells({ book, rowsOf }: Pick<Notebook, 'book' | 'rowsOf'>): number {
  let cells = 0;
  for (const { key, parts } of book.sheets)
    for (const part of parts)
      if (part.kind === 'table') cells += (rowsOf(`${key}.${part.name}`) ?? 0) * part.columns.length;
  return cells;
}

/**
 * Tries an entry for a line, in the notebook of the trial before if there is one. Refused where the line cannot read the
 * entry. Nothing is applied to `notebook`.
 */
export function tryValue(
  notebook: Notebook,
  { place, id }: { readonly place: CellPlace; readonly id: string },
  entry: string,
  before?: ValueTrial,
): Outcome<ValueTrial> {
  const item = notebook.model.items.get(id);
  if (item?.kind !== 'input') return fail(problem('set-calculated', nowhere, { name: id }));
  if (item.row.kind === 'given') {
    const broken = tryEntry(notebook, id, entry).problems.filter(({ severity }) => severity === 'error');
    if (broken.length > 0) return { ok: false, problems: broken };
  }
  const edit = enterText(notebook.book, place, entry);
  if (!edit.ok) return edit;
  const beside = before?.notebook ?? openNotebook(notebook.book);
  const applied = beside.apply(edit.value);
  return applied.ok ? succeed({ place, id, entry, edit: edit.value, notebook: beside }) : applied;
}

const nowhere = { from: 0, to: 0 };

/** Every check, on any sheet and at any depth, that stands otherwise with the value tried; those that turn come first. */
export function movedChecks(book: Notebook, tried: Notebook): readonly MovedCheck[] {
  const moved = findingsOf(book).checks.flatMap((check): MovedCheck[] => {
    const after = tried.verdict(check.item.id);
    const [wasIdle, isIdle] = [book, tried].map((one) => one.result(check.item.id).status === 'inapplicable');
    if (!isMoved(check.verdict, after) && wasIdle === isIdle) return [];
    const turns = check.verdict?.holds !== after?.holds || wasIdle !== isIdle;
    const words = verdictWords(check.verdict, after);
    const said = { before: wasIdle ? IDLE : words.before, after: isIdle ? IDLE : words.after };
    return [{ check, ...said, holds: after?.holds, isBeyond: after?.outOfRange !== undefined, turns }];
  });
  return moved.toSorted((a, b) => Number(b.turns) - Number(a.turns));
}

const IDLE = 'does not apply';

/** What rounding leaves is no move: of a utilisation, or of the whole capacity where terms cancel and leave next to nothing. */
const ROUNDING = 1e-12;

function isMoved(before: Verdict | undefined, after: Verdict | undefined): boolean {
  if (before?.holds !== after?.holds || before?.outOfRange?.message !== after?.outOfRange?.message)
    return true;
  const [a, b] = [before && shareOf(before), after && shareOf(after)];
  if (a === undefined || b === undefined) return a !== b;
  return !Object.is(a, b) && !(Math.abs(a - b) <= ROUNDING * Math.max(Math.abs(a), Math.abs(b), 1));
}

/** Both verdicts in words, with as many digits as it takes to tell their utilisations apart. */
function verdictWords(
  before: Verdict | undefined,
  after: Verdict | undefined,
): { readonly before: string; readonly after: string } {
  const words = { before: wordsOf(before), after: wordsOf(after) };
  for (let digits = 4; words.before === words.after && digits <= 15; digits += 1) {
    words.before = wordsOf(before, digits);
    words.after = wordsOf(after, digits);
  }
  return words;
}

function wordsOf(verdict: Verdict | undefined, digits?: number): string {
  if (!verdict) return 'no value';
  const { holds } = verdict;
  const utilisation = shareOf(verdict);
  const said = verdictWord(verdict);
  if (utilisation === undefined) return said;
  const percent =
    digits === undefined
      ? writeUtilisation(utilisation, holds)
      : `${numberInPrint((100 * utilisation).toPrecision(digits))} %`;
  return `${percent} ${said}`;
}
