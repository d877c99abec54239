import type { Problem } from '../../../diagnostics/index.ts';
import type { Fate } from '../../../tables/index.ts';

/** How many cells of a text became what; cells with nothing in them are not counted. */
export type CellCounts = Readonly<Partial<Record<Fate, number>>>;

const WORDS: readonly (readonly [fate: Fate, words: string])[] = [
  ['heading', 'headings'],
  ['taken', 'taken'],
  ['marked', 'marked'],
  ['out', 'left out'],
  ['refused', 'refused'],
  ['held', 'waiting for these'],
];

/** The most marked cells that a sentence names. */
const MOST = 2;

/** The cells of a text in numbers that add up: “26 cells: 2 headings, 22 taken, 2 marked”. */
export function accountNumbers(counts: CellCounts): string {
  const parts = WORDS.flatMap(([fate, words]) => {
    const count = counts[fate] ?? 0;
    return count > 0 || fate === 'taken'
      ? [{ count, words: count === 1 && fate === 'heading' ? '1 heading' : `${count} ${words}` }]
      : [];
  });
  const cells = parts.reduce((sum, { count }) => sum + count, 0);
  return `${cells === 1 ? '1 cell' : `${cells} cells`}: ${parts.map(({ words }) => words).join(', ')}`;
}

/** The same with the first cells that are marked and what is told of the text: “24 cells: 22 taken, 2 marked: line 3, column B, …”. */
export function accountWords(counts: CellCounts, problems: readonly Problem[]): string {
  const marked = problems.filter(({ code }) => MARKS.includes(code));
  const named = marked.slice(0, MOST).map(({ message }) => message);
  const more = (counts.marked ?? 0) - named.length;
  const where = named.length === 0 ? '' : `: ${named.join('; ')}${more > 0 ? ` and ${more} more` : ''}`;
  const anew = problems.filter(({ code }) => TOLD.includes(code));
  return [`${accountNumbers(counts)}${where}`, ...anew.map(({ message }) => message)].join('; ');
}

/** The problems of single cells that are taken as they are. */
const MARKS: readonly string[] = ['cell-unread', 'cell-remarkable'];

/** The problems of a whole text that a person is to know of when its rows are there. */
const TOLD: readonly string[] = [
  'columns-calculated-anew',
  'signs-unseen',
  'total-apart',
  'total-uncompared',
];
