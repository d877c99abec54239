import { html, nothing, type TemplateResult } from 'lit';
import { plainWidth } from '../../../figures/index.ts';
import type { ColumnView, PrintedRow } from '../../../record/index.ts';
import { unitInPrint } from '../../../units/index.ts';
import { drawSymbol } from '../line/formula-view.ts';
import { PRINTED_NOTES } from '../paper/page-measure.ts';
import { isText } from './column-width.ts';

/** The size of the letters of a printed table in px, and what a cell has beside them. */
const LETTERS = PRINTED_NOTES;
const PADDING = 9;

/** What a description has at least, and at most in px. */
const [LEAST_LABEL, MOST_LABEL] = [100, 250];

/** The room between two turned tables side by side. */
const BETWEEN = 26;

/** Of lines that stand together so many are not broken across pages. */
const MOST_LINES = 18;

/** The widths of a turned table in px, and how many stand side by side. */
export interface Turned {
  readonly abreast: number;
  readonly symbol: number;
  /** None where symbols stand alone. */
  readonly label: number;
  readonly unit: number;
  /** One for each printed row. */
  readonly values: readonly number[];
  /** About how high all of it is. */
  readonly height: number;
}

/**
 * A table of many columns and few rows turned: each column a line, with its description where it is `described`. Undefined
 * where that has no room.
 */
export function turnedTable(
  views: readonly ColumnView[],
  rows: readonly PrintedRow[],
  room: number,
  described: boolean,
): Turned | undefined {
  const symbol = Math.min(90, Math.max(...views.map(({ column }) => symbolWidth(column.name)))) + PADDING;
  const unit = Math.max(...views.map((view) => textWidth(unitInPrint(view.unit)))) + PADDING;
  const values = rows.map((row) => {
    if (typeof row !== 'number') return 14;
    return Math.max(20, ...views.map((view) => valueWidth(view, row))) + PADDING;
  });
  const least = symbol + unit + values.reduce((sum, width) => sum + width, 0);
  const leastLabel = described ? LEAST_LABEL : 0;
  const abreast = Math.min(4, Math.floor((room + BETWEEN) / (least + leastLabel + BETWEEN)));
  if (abreast < 1) return undefined;
  const label = described
    ? Math.min(MOST_LABEL, Math.floor((room - (abreast - 1) * BETWEEN) / abreast - least))
    : 0;
  const taken = (text: string, width: number): number =>
    Math.ceil((textWidth(text) * 1.1) / (width - PADDING));
  const height = views
    .map((view) => {
      const cells =
        isText(view.column) || !/\d/.test(view.at(0).text)
          ? rows.map((row, at) => (typeof row === 'number' ? taken(view.at(row).text, values[at] ?? 1) : 1))
          : [];
      return 5 + 16 * Math.max(1, described ? taken(view.column.label ?? '', label) : 1, ...cells);
    })
    .reduce((sum, line) => sum + line / abreast, 24);
  return { abreast, symbol, label, unit, values, height };
}

/** Draws a turned table, its lines in groups that are not broken, each as many columns of lines as stand abreast. */
export function drawTurned(
  views: readonly ColumnView[],
  rows: readonly PrintedRow[],
  turned: Turned,
  cell: (view: ColumnView, row: number) => TemplateResult,
): TemplateResult {
  const { abreast } = turned;
  const most = abreast === 1 ? views.length : MOST_LINES * abreast;
  const groups = Math.ceil(views.length / most);
  const perGroup = Math.ceil(views.length / groups / abreast) * abreast;
  return html`${inRuns(views, perGroup).map(
    (group) =>
      html`<div class="abreast">
        ${inRuns(group, Math.ceil(group.length / abreast)).map((lines) => oneTable(lines, rows, turned, cell))}
      </div>`,
  )}`;
}

function inRuns<T>(all: readonly T[], length: number): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(all.length / length) }, (_, at) =>
    all.slice(at * length, (at + 1) * length),
  );
}

function oneTable(
  lines: readonly ColumnView[],
  rows: readonly PrintedRow[],
  { symbol, label, unit, values }: Turned,
  cell: (view: ColumnView, row: number) => TemplateResult,
): TemplateResult {
  return html`<table class="turned">
    <colgroup>
      ${[symbol, ...(label > 0 ? [label] : []), unit, ...values].map((width) => html`<col .style=${`width: ${width.toFixed(1)}px`} />`)}
    </colgroup>
    <thead>
      <tr>
        <td colspan=${label > 0 ? 3 : 2} class="words">row</td>
        ${rows.map((row) => (typeof row === 'number' ? html`<th scope="col">${row + 1}</th>` : html`<td class="words">…</td>`))}
      </tr>
    </thead>
    <tbody>
      ${lines.map(
        (view) =>
          html`<tr>
            <th scope="row" class="symbol">${drawSymbol(view.column.name)}</th>
            ${label > 0 ? html`<td class="words">${view.column.label ?? ''}</td>` : nothing}
            <td class="words unit">${unitInPrint(view.unit)}</td>
            ${rows.map((row) => (typeof row === 'number' ? cell(view, row) : html`<td>${nothing}</td>`))}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

function valueWidth(view: ColumnView, row: number): number {
  const { text, state } = view.at(row);
  const width =
    textWidth(text) + (state === 'stated' ? textWidth(' (stated)') : 0) + (state === 'bad' ? 16 : 0);
  if (!isText(view.column) && !/\p{L}{3}/u.test(text)) return width;
  // Words are broken between, never within.
  return Math.max(...text.split(/[\s-]/).map(textWidth));
}

function textWidth(text: string): number {
  return plainWidth(text, LETTERS) * 1.05;
}

/** A symbol with its index below. */
function symbolWidth(name: string): number {
  const [head = '', ...below] = name.split('_');
  return head.length * 8.5 + below.join(',').length * 6.5;
}
