import type { Consents, Decimal } from '../../../tables/index.ts';
import { type Answers, decimalWords, rowsOutWords } from './rows-choices.ts';
import type { RowsReading } from './rows-reading.ts';

/** What the person has said of the numbers and rows of a text; what is not here is found out or asked. */
export type Said = Omit<Consents, 'noRows'> & {
  readonly decimal?: Decimal;
  readonly noRows?: true;
};

/** A question that a text may raise: its words, the problems that raise it, and the answers. */
export interface RowsQuestion {
  readonly key: keyof Said;
  readonly question: string;
  readonly codes: readonly string[];
  readonly answers: Answers<string>;
}

/** Every question that can be answered for a whole text, in the order in which they are asked. */
export const rowsQuestions: readonly RowsQuestion[] = [
  {
    key: 'decimal',
    question: 'What stands in front of decimals',
    codes: ['decimal-ambiguous'],
    answers: decimalWords,
  },
  {
    key: 'totals',
    question: 'Totals among the rows',
    codes: ['row-total', 'row-all'],
    answers: rowsOutWords,
  },
  {
    key: 'sums',
    question: 'Rows that are sums of those above',
    codes: ['row-sum'],
    answers: rowsOutWords,
  },
  {
    key: 'notes',
    question: 'Notes among the rows and above the headers',
    codes: ['row-note', 'row-numbering', 'rows-above-headers'],
    answers: rowsOutWords,
  },
  {
    key: 'unnamed',
    question: 'Rows of numbers without words',
    codes: ['row-unnamed'],
    answers: rowsOutWords,
  },
  {
    key: 'blankRows',
    question: 'Blank rows among the numbers',
    codes: ['rows-blank-between'],
    answers: [
      ['in', 'stay: each number goes to the row where it stands'],
      ['out', 'left out: what is below moves up'],
    ],
  },
  {
    key: 'nil',
    question: 'Dashes and words for none among numbers',
    codes: ['cells-nil'],
    answers: [
      ['blank', 'blank: no number is known'],
      ['zero', '0: there is none'],
    ],
  },
  {
    key: 'parentheses',
    question: 'Parentheses around a number',
    codes: ['cells-parentheses'],
    answers: [
      ['minus', 'a minus'],
      ['plain', 'nothing: the number is as it stands'],
    ],
  },
  {
    key: 'thousands',
    question: 'Commas between digits',
    codes: ['cells-split', 'cells-split-more', 'row-ends-blank'],
    answers: [['plain', 'each parts two cells; for one number put it in quotation marks above']],
  },
  {
    key: 'short',
    question: 'Lines that end early',
    codes: ['row-short'],
    answers: [['blank', 'their last cells are blank']],
  },
  {
    key: 'noRows',
    question: 'Rows under the headers',
    codes: ['table-no-rows'],
    answers: [['true', 'there are none, and that is meant']],
  },
];

/** The questions that a text raises or that are answered: what is answered can be answered anew. */
export function openQuestions(read: RowsReading | undefined, said: Said): readonly RowsQuestion[] {
  const problems = read === undefined ? [] : read.ok ? read.value.problems : read.problems;
  const codes = new Set<string>(problems.map(({ code }) => code));
  return rowsQuestions.filter(
    ({ key, codes: raise }) => said[key] !== undefined || raise.some((code) => codes.has(code)),
  );
}

/** What was said, with one more answer, or without one that is taken back. */
export function withAnswer(said: Said, key: keyof Said, answer: string | undefined): Said {
  const others = Object.entries(said).filter(([name]) => name !== key);
  const entry = answer === undefined ? [] : [[key, key === 'noRows' ? true : answer]];
  return Object.fromEntries([...others, ...entry]) as Said;
}
