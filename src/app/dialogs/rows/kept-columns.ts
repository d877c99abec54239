import { html, nothing, type TemplateResult } from 'lit';
import { blankMeanings, cellOf, type Table } from '../../../document/index.ts';
import { type Followed, followItems, nameColumn, nameItems } from '../../editing/clipboard/follow-items.ts';
import { cellsFor, type NewRows } from '../../editing/clipboard/new-rows.ts';
import { headingOf, isOfOthers, othersFilled, renamedRows } from '../../editing/clipboard/other-columns.ts';
import type { Others, Where } from '../../editing/clipboard/put-rows.ts';
import { namesOf } from '../../editing/lines/describe-insertion.ts';
import { type Answers, choiceOf } from './rows-choices.ts';

/** Columns that hold something in rows that are gone over, and that the text has nothing for. */
export interface KeptColumns {
  /** Their headings, at least one. */
  readonly names: readonly string[];
  /** What they come to where they are blank, as far as they have something for that. */
  readonly blank: readonly string[];
  /** Whether one of them is calculated, and values are stated in its cells. */
  readonly isStated: boolean;
  /** Whether the rows name items that what these columns hold could go with. */
  readonly isNamed: boolean;
  /** Finds where the items of the rows stood before. */
  readonly follow: () => Followed | undefined;
  /** Finds the rows that are called otherwise from now on: what they are called, and what they were. */
  readonly renamed: () => readonly (readonly [now: string, before: string])[];
  /** Whether a person must say what becomes of it: the rows are called otherwise from now on. */
  readonly isAsked: boolean;
}

/** The columns that go on holding what they hold while rows take the place of others; undefined where there are none. */
export function keptColumns(table: Table, rows: NewRows, where: Where): KeptColumns | undefined {
  if (where.kind !== 'from') return undefined;
  const kept = othersFilled(table, rows, where.row);
  return kept.length > 0
    ? {
        names: kept.map(headingOf),
        blank: blankMeanings(kept.filter((column) => column.kind === 'given')),
        isStated: kept.some(({ kind }) => kind === 'calc'),
        isNamed: nameItems(table, rows),
        follow: () => followItems(table, rows, where.row),
        renamed: () => {
          const name = nameColumn(table, rows);
          const now = name && cellsFor(name, rows);
          return [...renamedRows(table, rows, where.row, kept)].map((at) => [
            `${now?.[at - where.row] ?? ''}`,
            `${(name && cellOf(name, at)) ?? ''}`,
          ]);
        },
        isAsked: isOfOthers(table, rows, where.row, kept),
      }
    : undefined;
}

const withItem: Answers<Others> = [['follow', 'goes with the item of that name']];
const answers: Answers<Others> = [
  ['stay', 'stays in its row'],
  ['empty', 'goes: these cells become blank'],
];

/** What other columns hold is of the items that stood there; where others take their place, nobody knows whether it stays. */
export function othersQuestion(
  { names, blank, isStated, isAsked, isNamed, follow, renamed }: KeptColumns,
  others: Others | undefined,
  choose: (others: Others) => void,
): TemplateResult {
  const followed = others === 'follow' ? follow() : undefined;
  const question = `What ${namesOf(names)} ${names.length === 1 ? 'holds' : 'hold'} in these rows`;
  return html`<div class="others">
    ${choiceOf(question, [...(isNamed ? withItem : []), ...answers], others ?? (isAsked ? undefined : 'stay'), choose)}
    ${others === 'stay' && isAsked ? html`<p class="quiet">${stayingWords(renamed())}</p>` : nothing}
    ${followed ? html`<p class="quiet">${followedWords(followed)}</p>` : nothing}
    ${others !== undefined && others !== 'stay' && blank.length > 0 ? html`<p class="quiet">Blank they count as ${blank.join(', ')}.</p>` : nothing}
    ${others !== undefined && isStated && (others !== 'stay' || isAsked) ? html`<p class="quiet">${others === 'stay' ? 'Reasons of stated values are to be confirmed there.' : 'Where no value is stated any more, the computed one comes back.'}</p>` : nothing}
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
