import type { Part, Sheet, Table } from '../../document/index.ts';
import type { ChangedLines } from '../../notebook/index.ts';
import { columnSummed, idsOfLikeLines } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import type { DeferredRendering } from './deferred-rendering.ts';
import { QuayLine } from './line/quay-line.ts';
import { QuayWords } from './line/quay-words.ts';

import type { PageElements } from './page-elements.ts';
import { QuayTable } from './table/quay-table.ts';

/** Where the parts of a page are drawn again after an edit. */
export interface Drawing {
  readonly session: Session;
  readonly elements: PageElements;
  readonly rendering: DeferredRendering;
}

/** Has those parts of a page drawn again that an edit concerns; `changed` has the ids of the values that came out anew. */
export function drawChanged(drawing: Drawing, sheet: Sheet, changed: ChangedLines): void {
  for (const part of sheet.parts) {
    if (part.kind === 'rows') drawLines(drawing, sheet.key, part, changed);
    else if (part.kind === 'table') drawTable(drawing, sheet.key, part, changed);
    else drawWords(drawing, sheet.key, part);
  }
}

function drawLines(
  { session, elements, rendering }: Drawing,
  sheet: string,
  part: Extract<Part, { kind: 'rows' }>,
  changed: ChangedLines,
): void {
  const title = elements.at({ sheet, part: part.id, item: '', field: '' });
  if (title instanceof QuayWords) title.source = part;
  const alike = likeChanged(session, sheet, part, changed);
  for (const row of part.rows) {
    const line = elements.at({ sheet, part: part.id, item: row.id, field: '' });
    if (!(line instanceof QuayLine)) continue;
    const id = `${sheet}.${row.name}`;
    const item = session.notebook.model.items.get(id);
    // The rows of a sum may change, and what they add to as they are printed, while the sum does not.
    const summed = item && columnSummed(item);
    const rowsChanged = summed !== undefined && changed.has(summed);
    const concerned =
      row.kind === 'check' || line.active !== '' || changed.has(id) || alike.has(id) || rowsChanged;
    if (line.source !== row) line.source = row;
    else if (concerned || line.drawnItem !== item) rendering.schedule(line);
  }
}

/** The lines that share their decimals with one that came out anew, or that did before it did. */
function likeChanged(
  { notebook, units }: Session,
  sheet: string,
  { rows }: Extract<Part, { kind: 'rows' }>,
  changed: ChangedLines,
): ReadonlySet<string> {
  const alike = new Set<string>();
  for (const [at, { name }] of rows.entries()) {
    if (!changed.has(`${sheet}.${name}`)) continue;
    for (const near of rows.slice(Math.max(at - 1, 0), at + 2)) {
      const item = notebook.model.items.get(`${sheet}.${near.name}`);
      if (!item || alike.has(item.id)) continue;
      for (const id of idsOfLikeLines(notebook, item, units)) alike.add(id);
    }
  }
  return alike;
}

function drawTable(
  { elements, rendering }: Drawing,
  sheet: string,
  table: Table,
  changed: ChangedLines,
): void {
  const own = elements.at({ sheet, part: table.id, item: '', field: '' });
  if (!(own instanceof QuayTable)) return;
  const id = `${sheet}.${table.name}`;
  const concerned =
    own.table !== table || changed.has(id) || table.columns.some(({ name }) => changed.has(`${id}.${name}`));
  own.table = table;
  if (concerned) rendering.schedule(own);
  for (const column of table.columns) {
    const line = elements.at({ sheet, part: table.id, item: column.id, field: '' });
    if (!(line instanceof QuayLine) || column.kind === 'given') continue;
    line.source = column;
    if (concerned) rendering.schedule(line);
  }
}

function drawWords(
  { elements, rendering }: Drawing,
  sheet: string,
  part: Exclude<Part, { kind: 'rows' | 'table' }>,
): void {
  const own = elements.at({ sheet, part: part.id, item: '', field: '' });
  if (!(own instanceof QuayWords)) return;
  own.source = part;
  if (part.kind === 'figure' || part.kind === 'chart') rendering.schedule(own);
}
