import { html, nothing, type TemplateResult } from 'lit';
import { blankMeanings, cellOf, statedInRows, statedInWords, type Table } from '../../../document/index.ts';
import { type Followed, followItems, nameColumn, nameItems } from '../../editing/clipboard/follow-items.ts';
import { cellsFor, type NewRows } from '../../editing/clipboard/new-rows.ts';
import {
  filledFrom,
  headingOf,
  isOfOthers,
  othersFilled,
  renamedRows,
} from '../../editing/clipboard/other-columns.ts';
import type { Others } from '../../editing/clipboard/what-becomes.ts';
import type { Where } from '../../editing/clipboard/where.ts';
import { namesOf } from '../../editing/lines/describe-insertion.ts';
import { type Answers, choiceOf } from './rows-choices.ts';

/** Columns that hold something in rows that are gone over, and that the text has nothing for. */
export interface KeptColumns {
  /** Their headings, at least one. */
  readonly names: readonly string[];
  /** What they come to where they are blank, as far as they have something for that. */
  readonly blank: readonly string[];
  /** What becomes of it where nobody says anything; undefined where a person must. */
  readonly meant: Others | undefined;
  /** The values that are stated there. */
  readonly stated: readonly string[];
  /** Whether the rows go over others; else these are replaced. */
  readonly isOver: boolean;
  /** Whether the rows name items that what these columns hold could go with. */
  readonly isNamed: boolean;
  /** Finds where the items of the rows stood before. */
  readonly follow: () => Followed | undefined;
  /** Finds the rows that are called otherwise from now on: what they are called, and what they were. */
  readonly renamed: () => readonly (readonly [now: string, before: string])[];
}

/** The columns that hold something rows have nothing for, where it may stay or go with its item; undefined where there are none. */
export function keptColumns(table: Table, rows: NewRows, where: Where): KeptColumns | undefined {
  if (where.kind === 'behind') return undefined;
  const isOver = where.kind === 'from';
  const row = isOver ? where.row : 0;
  const kept = isOver ? othersFilled(table, rows, row) : filledFrom(table, rows, row);
  if (kept.length === 0) return undefined;
  const stated = statedInRows(table).filter(
    (one) => kept.includes(one.column) && one.row >= row && !(isOver && one.row >= row + rows.length),
  );
  const isNamed = nameItems(table, rows);
  const sources = isOver || !isNamed ? [] : (followItems(table, rows, where)?.from ?? []);
  // Rows whose items do not come again take what they hold along.
  if (!isOver && sources.every((source) => source === undefined)) return undefined;
  const isAsked = isOver
    ? isOfOthers(table, rows, row, kept)
    : stated.some((one) => sources.includes(one.row));
  return {
    names: kept.map(headingOf),
    blank: blankMeanings(kept.filter((column) => column.kind === 'given')),
    meant: isAsked ? undefined : isOver ? 'stay' : 'empty',
    stated: stated.map((one) => statedInWords(table, one)),
    isNamed,
    follow: () => followItems(table, rows, where),
    renamed: () => {
      const name = nameColumn(table, rows);
      const now = name && cellsFor(name, rows);
      return isOver
        ? [...renamedRows(table, rows, row, kept)].map((at) => [
            `${now?.[at - row] ?? ''}`,
            `${(name && cellOf(name, at)) ?? ''}`,
          ])
        : [];
    },
    isOver,
  };
}

/** What becomes of what the columns hold, as far as it is said; rows that are replaced do not stay. */
export function othersMeant(kept: KeptColumns | undefined, said: Others | undefined): Others | undefined {
  if (!kept) return undefined;
  return said === undefined || (said === 'stay' && !kept.isOver) ? kept.meant : said;
}

const withItem: Answers<Others> = [['follow', 'goes with the item of that name']];
const inRow: Answers<Others> = [['stay', 'stays in its row']];
const blanked: Answers<Others> = [['empty', 'goes: these cells become blank']];
const deleted: Answers<Others> = [['empty', 'is deleted with the rows there']];

/** What other columns hold is of the items that stood there; where others take their place, nobody knows whether it stays. */
export function othersQuestion(
  kept: KeptColumns,
  said: Others | undefined,
  choose: (others: Others) => void,
): TemplateResult {
  const { names, blank, meant, stated, isNamed, isOver, follow, renamed } = kept;
  const others = othersMeant(kept, said);
  const followed = others === 'follow' ? follow() : undefined;
  const where = isOver ? 'in these rows' : 'in the rows there';
  const question = `What ${namesOf(names)} ${names.length === 1 ? 'holds' : 'hold'} ${where}`;
  const answers = [...(isNamed ? withItem : []), ...(isOver ? [...inRow, ...blanked] : deleted)];
  return html`<div class="others">
    ${choiceOf(question, answers, others, choose)}
    ${stated.length > 0 ? html`<p class="quiet">Stated there: ${stated.join('; ')}.</p>` : nothing}
    ${others === 'stay' && meant === undefined ? html`<p class="quiet">${stayingWords(renamed())}</p>` : nothing}
    ${followed ? html`<p class="quiet">${followedWords(followed)}</p>` : nothing}
    ${others !== undefined && others !== 'stay' && blank.length > 0 ? html`<p class="quiet">Blank they count as ${blank.join(', ')}.</p>` : nothing}
    ${others !== undefined && others !== 'stay' && stated.length > 0 ? html`<p class="quiet">Where no value is stated any more, the computed one comes back.</p>` : nothing}
  </div>`;
}

/** How many rows find their item, and what is called otherwise, new, gone or more than once. */
export function followedWords({ from, fresh, gone, doubled }: Followed): string {
  const found = from.filter((place) => place !== undefined).length;
  const told = [
    `${found} of ${from.length} ${from.length === 1 ? 'row' : 'rows'} ${found === 1 ? 'finds its' : 'find their'} item`,
    fresh.length > 0 ? `new, and blank there: ${namesOf(fresh)}` : '',
    gone.length > 0 ? `gone with what they hold: ${namesOf(gone)}` : '',
    doubled.length > 0 ? `called alike, and blank there: ${namesOf(doubled)}` : '',
  ];
  return `${told.filter((words) => words !== '').join('; ')}.`;
}

/** So many rows are named in which what stays is of another item. */
const MOST_RENAMED = 3;

/** In which rows what stays is of another item from now on. */
export function stayingWords(renamed: readonly (readonly [now: string, before: string])[]): string {
  const named = renamed.slice(0, MOST_RENAMED).map(([now, before]) => `“${now}” gets that of “${before}”`);
  const more = renamed.length - named.length;
  return `${[...named, ...(more > 0 ? [`${more} more get that of another`] : [])].join('; ')}.`;
}
