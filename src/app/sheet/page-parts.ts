import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Column, Part, Table } from '../../document/index.ts';
import type { NewKind } from '../editing/lines/new-items.ts';
import type { Session } from '../session/session.ts';
import { drawBlockFoot } from './block-foot.ts';
import type { LineSource, Room } from './line/line-source.ts';
import type { OnPaper } from './paper/on-paper.ts';
import { type GridMap, hasTitle } from './place/grid-map.ts';
import type { SheetHost } from './sheet-host.ts';
import { hasNoLine } from './table/table-sources.ts';
import './line/quay-line.ts';
import './line/quay-words.ts';
import './table/quay-table.ts';

/** What the parts of a page are drawn with. */
export interface Page {
  readonly host: SheetHost;
  readonly session: Session;
  /** The key of the sheet. */
  readonly sheet: string;
  readonly map: GridMap;
  readonly room: Room;
  /** Given where it is laid out for paper. */
  readonly paper: OnPaper | undefined;
}

/** The row of the grid that the first row of the map is, counted from one: the heads of the columns come before it. */
const FIRST_ROW = 2;

/** The heads of the columns, for those who hear the page: the eye needs none. */
export function drawHeads(): TemplateResult {
  const heads = ['reference', 'symbol', 'description', 'calculation and result', 'unit', 'mark'];
  return html`<div role="rowgroup" class="unseen"><div role="row" aria-rowindex="1">${heads.map(
    (head, at) => html`<span role="columnheader" aria-colindex=${at + 1}>${head}</span>`,
  )}</div></div>`;
}

/** What an empty sheet says, with the first things to put on it. */
export function drawEmpty(add: (kind: NewKind) => void): TemplateResult {
  const button = (kind: NewKind, words: string): TemplateResult =>
    html`<button type="button" class="plain-button" @click=${() => add(kind)}>${words}</button>`;
  return html`<div class="empty">
    <p>An empty sheet. Begin with a value you know, or with words.</p>
    <div>
      ${button('given', 'A given value')} ${button('heading', 'A heading')} ${button('text', 'A text')}
      ${button('table', 'A table')}
    </div>
  </div>`;
}

/** A part of the page: words, a block of lines, a picture, or a table with the formulas of its columns. */
export function drawPart(page: Page, part: Part): TemplateResult {
  const index = page.map.indexOf({ part: part.id, item: '' });
  if (part.kind === 'table') return drawTable(page, part, index);
  const blank = part.kind === 'rows' && !hasTitle(part.title) && part.rows.length > 0;
  // Paper has no use for a title that is still to be typed.
  const titled = page.paper ? !blank : index >= 0;
  const words = html`<quay-words
    role="row"
    data-part=${part.id}
    data-item=""
    aria-rowindex=${index + FIRST_ROW}
    .host=${page.host}
    .session=${page.session}
    .sheet=${page.sheet}
    .source=${part}
  ></quay-words>`;
  if (part.kind !== 'rows') return html`<div role="rowgroup" class="part">${words}</div>`;
  const lines = repeat(
    part.rows,
    ({ id }) => id,
    (row) => drawLine(page, part.id, row, ''),
  );
  return html`<div role="rowgroup" class="part block${titled ? '' : ' untitled'}" aria-label=${part.title ?? ''}>
    ${titled ? words : nothing}
    ${page.paper ? html`<div class="two-columns">${lines}</div>` : lines}
    ${page.paper ? nothing : drawBlockFoot(part, page.map.indexOf({ part: part.id, item: part.rows.at(-1)?.id ?? '' }) === page.map.count - 1)}
  </div>`;
}

function drawTable(page: Page, part: Table, index: number): TemplateResult {
  const lines = part.columns.flatMap((column) =>
    column.kind === 'given' || (page.paper && standsAlone(page, part, column)) ? [] : [column],
  );
  return html`<div role="rowgroup" class="part">
      <quay-table
        role="none"
        data-part=${part.id}
        data-item=""
        .host=${page.host}
        .session=${page.session}
        .sheet=${page.sheet}
        .table=${part}
        .firstRow=${index + FIRST_ROW}
        .paper=${page.paper}
      ></quay-table>
    </div>
    ${
      lines.length === 0
        ? nothing
        : html`<div role="rowgroup" class="part column-lines${page.paper ? ' two-columns' : ''}" aria-label=${`formulas of ${part.title ?? part.name}`}>
          ${lines.map((column) => drawLine(page, part.id, column, part.name))}
        </div>`
    }`;
}

/** Whether a printed table says all of a column, so that no line explains it. */
const standsAlone = ({ session, sheet }: Page, { name }: Table, column: Column): boolean =>
  hasNoLine(session.notebook, `${sheet}.${name}`, column);

function drawLine(page: Page, part: string, source: LineSource, table: string): TemplateResult {
  return html`<quay-line
    role="row"
    data-part=${part}
    data-item=${source.id}
    aria-rowindex=${page.map.indexOf({ part, item: source.id }) + FIRST_ROW}
    .host=${page.host}
    .session=${page.session}
    .sheet=${page.sheet}
    .block=${part}
    .source=${source}
    .table=${table}
    .room=${page.room}
    .paper=${page.paper}
  ></quay-line>`;
}
