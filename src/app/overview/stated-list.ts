import { html, nothing, type TemplateResult } from 'lit';
import { isReasonOpen, type Notebook, type StatedValue, statedValues } from '../../notebook/index.ts';
import { labelOf, localName, math, statedWords, symbolMath, whyNotComputed } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';

/** So many stated values are listed: a column may have thousands. */
const MOST = 500;

/** What the page lends to each of its lists: the sheet in the margin, and a button as wide as its row. */
export interface ListParts {
  readonly sheetCell: (key: string, before: string | undefined) => TemplateResult;
  readonly goButton: (words: string | TemplateResult, place: CellPlace | undefined) => TemplateResult;
}

/** All stated values of a book: why each is stated, what is computed, how far apart the two are, and what it feeds. */
export function drawStatedList(session: Session, parts: ListParts): TemplateResult {
  const { notebook } = session;
  const all = statedValues(notebook);
  if (all.length === 0)
    return html`<p class="words quiet">
      No value is stated: every calculated line has the value of its formula. Type a value over a result to state it.
    </p>`;
  const listed = all.slice(0, MOST);
  const open = all.filter(({ statement }) => isReasonOpen(statement)).length;
  return html`<p class="words quiet">
      Stated values stand in place of what formulas come to, wherever their lines are
      used.${open === 0 ? nothing : html` <b class="open">${open === 1 ? '1 reason is open.' : `${open} reasons are open.`}</b>`}
    </p>
    <table aria-label="Stated values">
      <thead>
        <tr>
          <th scope="col" class="sheet">Sheet</th>
          <th scope="col" class="name">Symbol</th>
          <th scope="col">Description</th>
          <th scope="col" class="number">Stated</th>
          <th scope="col" class="number">Computed</th>
          <th scope="col" class="number">Difference</th>
          <th scope="col">Reason</th>
        </tr>
      </thead>
      <tbody>
        ${listed.map((one, at) => drawOne(session, one, listed[at - 1], parts))}
      </tbody>
    </table>
    ${all.length > MOST ? html`<p class="words quiet">${all.length - MOST} more stated values are not listed here.</p>` : nothing}`;
}

function drawOne(
  session: Session,
  one: StatedValue,
  before: StatedValue | undefined,
  { sheetCell, goButton }: ListParts,
): TemplateResult {
  const { notebook, units } = session;
  const { stated, typed, reason, reasonFor, computed, difference } = statedWords(notebook, one, units);
  const item = notebook.model.items.get(one.id);
  const sheet = sheetIn(one.id);
  const why = whyNotComputed(notebook, one, sheet);
  const where = one.side ?? (one.row === undefined ? undefined : `row ${one.row + 1}`);
  return html`<tr class="goes">
    ${sheetCell(sheet, before && sheetIn(before.id))}
    <td class="name">
      ${item ? drawMarkup(math(symbolMath(localName(item)))) : one.id}${where === undefined ? nothing : html`<div class="quiet">${where}</div>`}
    </td>
    <td>${goButton(item ? labelOf(item) : one.id, placeOfStated(notebook, one))}</td>
    <td class="number pen">${stated}${typed === undefined ? nothing : html`<div class="quiet">as typed: ${typed}</div>`}</td>
    <td class="number">${computed}</td>
    <td class="number">${difference ?? ''}</td>
    <td class="why">
      ${reason === '' ? html`<b class="open">reason open</b>` : reason}${reasonFor === undefined ? nothing : html` <b class="open">given for ${reasonFor}, to be confirmed</b>`}
      ${one.apart.map(({ message }) => html`<div><b class="open">${message}</b></div>`)}
      <div class="quiet">${feedsWords(notebook, one)}</div>
      ${why === undefined ? nothing : html`<div class="quiet">its formula: ${why}</div>`}
    </td>
  </tr>`;
}

/** Where a stated value stands on the page. */
function placeOfStated(notebook: Notebook, { id, row }: StatedValue): CellPlace | undefined {
  const place = placeOfId(notebook, id);
  return place && row !== undefined ? { ...place, item: `r${row}` } : place;
}

/** What takes a stated value up, by the names its own sheet has for them. */
function feedsWords({ model }: Notebook, { id, side, feeds }: StatedValue): string {
  if (side) return `the ${side} of this check`;
  if (feeds.length === 0) return 'feeds nothing';
  const names = feeds.map((one) => {
    const item = model.items.get(one);
    return item && item.sheet === sheetIn(id) ? localName(item) : one;
  });
  return `feeds ${names.join(', ')}`;
}

const sheetIn = (id: string): string => id.split('.', 1)[0] ?? '';
