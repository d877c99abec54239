import { html, nothing, type TemplateResult } from 'lit';
import {
  brokenLink,
  canLink,
  type Item,
  keepHeldEdit,
  linkSource,
  unlinkEdit,
} from '../../notebook/index.ts';
import { labelOf } from '../../record/index.ts';
import type { Session } from '../session/session.ts';
import type { AppRequest } from '../sheet/app-request.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';

/** What the line in hand takes its value from, or is to; and the commands to link it, to take the link off, to keep it as it is. */
export function drawLink(session: Session, item: Item): TemplateResult | typeof nothing {
  const { notebook } = session;
  const toLink =
    item.kind === 'input' ? item.row.toLink : item.kind === 'input column' ? item.column.toLink : undefined;
  const from = linkSource(item, notebook.model.items);
  const broken = brokenLink(item, notebook.model.items);
  const isLinked = item.kind === 'formula' && item.row.kind === 'calc' && item.row.link !== undefined;
  // The stated value has the commands of its own, and goes before the link does.
  const isStated = item.kind === 'formula' && item.stated !== undefined;
  if (toLink === undefined && !canLink(item)) return nothing;
  const place = placeOfId(notebook, item.id);
  return html`<h3>${broken !== undefined ? 'Link broken' : toLink === undefined ? 'Link' : 'To be linked'}</h3>
    ${toLink === undefined ? nothing : html`<p>It stood for ${toLink}, and holds the value that had.</p>`}
    ${from ? html`<p>${isStated ? 'Its formula takes the value of' : 'It takes its value from'} ${labelOf(from)}, on “${sheetTitle(session, from)}”${isStated ? '; another value is stated in its place. Use the computed value to have the link in force, or to take it off' : ''}.</p>` : nothing}
    ${
      broken === undefined
        ? nothing
        : html`<p>It took its value from ${broken}, which is not in the book any more. Link it to another line, or take the
            link off to have the entry back that it had before.</p>`
    }
    <div class="ends">
      ${
        canLink(item) && place
          ? html`<button class="fix" @click=${(event: Event) => ask(event, place)}>
              ${isLinked ? 'Link to another line' : 'Take the value from a line'}
            </button>`
          : nothing
      }
      ${isLinked && !isStated ? html`<button class="fix" @click=${() => unlink(session, item)}>Take the link off</button>` : nothing}
      ${
        toLink === undefined
          ? nothing
          : html`<button class="fix" @click=${() => keep(session, item)}>Keep the value as it is</button>`
      }
    </div>`;
}

function sheetTitle({ notebook }: Session, { sheet }: Item): string {
  return notebook.book.sheets.find(({ key }) => key === sheet)?.title || sheet;
}

function ask({ currentTarget }: Event, place: CellPlace): void {
  currentTarget?.dispatchEvent(
    new CustomEvent<AppRequest>('ask', { detail: { about: 'link', place }, bubbles: true, composed: true }),
  );
}

function unlink(session: Session, { id }: Item): void {
  const edit = unlinkEdit(session.notebook, id);
  if (edit.ok) session.apply(edit.value);
}

function keep(session: Session, { id }: Item): void {
  const edit = keepHeldEdit(session.notebook, id);
  if (edit) session.apply(edit);
}
