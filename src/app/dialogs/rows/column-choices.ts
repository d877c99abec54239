import { css, html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Column, Table } from '../../../document/index.ts';
import { type Destination, type Mapping, type TextColumn, unitOfHeader } from '../../../tables/index.ts';
import { type UnitRegistry, unitInPrint } from '../../../units/index.ts';
import type { TakenAs } from './rows-preview.ts';

/** What the person is asked of the columns of a text. */
export interface ColumnQuestion {
  readonly table: Table;
  readonly columns: readonly TextColumn[];
  readonly mapping: Mapping;
  /** What columns are taken as, by position, as far as the text can be read. */
  readonly taken: ReadonlyMap<number, TakenAs>;
  /** The unit of bare numbers that go to a column of the table. */
  readonly unit: (name: string) => string;
  /** The units that headers may have. */
  readonly registry: UnitRegistry;
  /** Takes the answer for one column. */
  readonly goes: (column: TextColumn, to: Destination) => void;
  /** How many columns are shown, of a text that has more. */
  readonly shown: number;
  readonly showMore: () => void;
}

/** So many columns of a text are shown at first, and so many more each time: a line of prose may part into thousands. */
export const COLUMNS_AT_ONCE = 100;

/** What all columns are asked of, found out once. */
interface Choices extends ColumnQuestion {
  /** The columns of the text that go to a column of the table, by its name. */
  readonly holders: ReadonlyMap<string, readonly TextColumn[]>;
}

export const columnChoicesStyles = css`
  .mapping {
    margin-block-start: 14px;
    overflow-x: auto;
  }
  .mapping table {
    width: 100%;
    min-width: 36rem;
    border-collapse: collapse;
    font-size: 14px;
  }
  .mapping :is(th, td) {
    padding: 2px 14px 2px 0;
    text-align: start;
    vertical-align: middle;
    overflow-wrap: anywhere;
  }
  .mapping thead th {
    color: var(--ink-soft);
    font-size: 13px;
    font-weight: 400;
  }
  .mapping tbody th {
    width: 24%;
    font-weight: 600;
  }
  .mapping .first {
    width: 18%;
    color: var(--ink-soft);
  }
  .mapping .unit {
    width: 6.5rem;
    padding-inline-end: 2px;
  }
  .mapping .number {
    text-align: end;
    white-space: nowrap;
  }
  .mapping td.number {
    font-variant-numeric: tabular-nums;
  }
  .mapping :is(select, input) {
    margin: 0;
    font-size: 14px;
  }
  .mapping [aria-invalid='true'] {
    border-block-end-color: var(--bad);
    color: var(--bad);
  }
  .mapping .asked {
    display: none;
  }
  /* Side by side the last of them would lie beyond the edge: each column of the text stands by itself, its questions in words. */
  @media (width < 40rem) {
    .mapping {
      max-height: none;
      overflow: visible;
    }
    .mapping table {
      display: block;
      min-width: 0;
    }
    .mapping thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .mapping tbody {
      display: block;
    }
    .mapping tbody tr {
      display: grid;
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      gap: 6px 14px;
      align-items: start;
      padding-block: 8px;
      border-block-end: 1px solid var(--rule);
    }
    .mapping tbody :is(th, td, .first, .unit) {
      width: auto;
      padding: 0;
    }
    .mapping tbody th {
      grid-column: 1 / -1;
    }
    .mapping td:not(:has(.asked)) {
      display: none;
    }
    .mapping .number {
      text-align: start;
    }
    .mapping .asked {
      display: block;
      color: var(--ink-soft);
      font-size: 13px;
    }
  }
`;

/** The columns of a text, each with the choice of what it goes to, and of its unit where it can have one. */
export function columnChoices(asked: ColumnQuestion): TemplateResult {
  const { columns, mapping, shown, showMore } = asked;
  const question = { ...asked, holders: holdersOf(asked) };
  const more = Math.min(columns.length - shown, COLUMNS_AT_ONCE);
  return html`<div class="mapping">
    <table role="table" aria-label="What the columns of the text go to">
      <thead role="rowgroup">
        <tr role="row">
          <th role="columnheader" scope="col">In the text</th>
          <th role="columnheader" scope="col">First value</th>
          <th role="columnheader" scope="col">Goes to</th>
          <th role="columnheader" scope="col">In the unit</th>
          <th role="columnheader" scope="col" class="number">Taken as</th>
          <th role="columnheader" scope="col" class="number">Sum</th>
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${columns.slice(0, shown).map((column) => {
          const to = mapping.goes.get(column.position);
          const taken = question.taken.get(column.position);
          return html`<tr role="row">
            <th role="rowheader" scope="row">${column.header || `column ${column.position + 1}`}</th>
            ${cell('First value', column.first?.text, 'first')}
            ${cell('Goes to', destinationField(question, column, to))}
            ${cell('In the unit', unitField(question, column, to), 'unit')}
            ${cell('Taken as', taken?.first, 'number')} ${cell('Sum', taken?.sum, 'number')}
          </tr>`;
        })}
      </tbody>
    </table>
    ${
      more > 0
        ? html`<button type="button" class="add" @click=${showMore}>
            Show ${more} more of the ${columns.length} columns
          </button>`
        : nothing
    }
  </div>`;
}

/** A cell under its heading; where the headings are out of sight, what it says has that in front of it. */
function cell(
  heading: string,
  content: TemplateResult | string | typeof nothing | undefined,
  name = '',
): TemplateResult {
  const isBlank = content === undefined || content === nothing || content === '';
  return html`<td role="cell" class=${name}>
    ${isBlank ? nothing : html`<span class="asked" aria-hidden="true">${heading}</span>${content}`}
  </td>`;
}

function holdersOf({ columns, mapping }: ColumnQuestion): Choices['holders'] {
  const holders = new Map<string, TextColumn[]>();
  for (const column of columns) {
    const to = mapping.goes.get(column.position);
    if (to?.kind === 'column') holders.set(to.name, [...(holders.get(to.name) ?? []), column]);
  }
  return holders;
}

const out = '-';
const unitless = '- no units';
const unitOf = 'unit of ';

function destinationField(
  question: Choices,
  column: TextColumn,
  to: Destination | undefined,
): TemplateResult {
  const options = question.table.columns.filter(
    ({ kind, name }) => kind === 'given' || (to?.kind === 'column' && to.name === name),
  );
  return html`<select
    aria-label=${`${called(column)} goes to`}
    aria-invalid=${to === undefined ? 'true' : nothing}
    @change=${({ target }: Event) => {
      const { value } = target as HTMLSelectElement;
      question.goes(column, chosen(value, column, question));
    }}
  >
    ${to === undefined ? html`<option value="" selected>– choose –</option>` : nothing}
    <option value=${out} .selected=${live(to?.kind === 'out' && !to.unitless)}>left out</option>
    <option value=${unitless} .selected=${live(to?.kind === 'out' && to.unitless === true)}>
      left out, no units of numbers
    </option>
    ${options.map((option) => {
      const holder = question.holders.get(option.name)?.find((one) => one !== column);
      return html`<option
        value=${option.name}
        .selected=${live(to?.kind === 'column' && to.name === option.name)}
        ?disabled=${holder !== undefined}
      >
        ${optionWords(option)}${holder ? ` – taken by ${called(holder)}` : ''}
      </option>`;
    })}
    ${unitOptions(question, to).map(
      ([value, isChosen, words]) =>
        html`<option value=${value} .selected=${live(isChosen)}>${words}</option>`,
    )}
  </select>`;
}

/** The columns of numbers of the text whose units, row by row, a column may have. */
function unitOptions(
  { table, holders }: Choices,
  to: Destination | undefined,
): readonly (readonly [value: string, isChosen: boolean, words: string])[] {
  const now = to?.kind === 'unit' ? to.of : undefined;
  return table.columns
    .filter(({ kind, name }) => name === now || (kind === 'given' && holders.has(name)))
    .filter((column) => column.kind === 'given' && (column.type ?? 'number') === 'number')
    .map(({ name }) => [`${unitOf}${name}`, name === now, `the units of ${name}, row by row`]);
}

function chosen(value: string, column: TextColumn, { table, registry }: ColumnQuestion): Destination {
  if (value === out) return { kind: 'out' };
  if (value === unitless) return { kind: 'out', unitless: true };
  if (value.startsWith(unitOf)) return { kind: 'unit', of: value.slice(unitOf.length) };
  const target = table.columns.find(({ name }) => name === value);
  return { kind: 'column', name: value, unit: target ? unitOfHeader(column, target, registry) : '' };
}

/** A column of a text in words: by its header, or else by its place and first value. */
function called({ header, position, first }: TextColumn): string {
  return header === '' ? `column ${position + 1} (“${first?.text}”)` : `“${header}”`;
}

/** A column of the table by its symbol, heading and unit; a calculated one takes nothing. */
function optionWords(column: Column): string {
  const { name, label = name, unit = '' } = column;
  const heading = label === name ? '' : ` · ${label}`;
  const inUnit = unit === '' || unit === '-' ? '' : ` (${unit})`;
  return `${name}${heading}${inUnit}${column.kind === 'given' ? '' : ' – calculated, left out'}`;
}

function unitField(
  question: ColumnQuestion,
  column: TextColumn,
  to: Destination | undefined,
): TemplateResult | typeof nothing {
  if (to?.kind !== 'column') return nothing;
  const { name } = to;
  const target = question.table.columns.find((one) => one.name === name);
  const numbers = target?.kind === 'given' && (target.type ?? 'number') === 'number';
  // A unit that the column cannot have can be taken away here.
  if (!numbers && to.unit === '') return nothing;
  return html`<input
    aria-label=${`unit of ${called(column)}`}
    autocomplete="off"
    spellcheck="false"
    placeholder=${numbers ? unitInPrint(question.unit(name)) : ''}
    .value=${live(to.unit)}
    @input=${({ target: field }: Event) =>
      question.goes(column, { ...to, unit: (field as HTMLInputElement).value })}
  />`;
}
