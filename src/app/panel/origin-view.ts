import { html, nothing, type TemplateResult } from 'lit';
import type { Item } from '../../notebook/index.ts';
import { fieldsTold, otherwiseWords, startWords } from '../../record/index.ts';
import { originsOf } from '../../review/index.ts';
import type { Session } from '../session/session.ts';
import { drawSaying } from '../sheet/line/formula-view.ts';

/** What the line in hand says otherwise than where its sheet came from, one beside the other. */
export function drawOrigin(session: Session, item: Item, room: number): TemplateResult | typeof nothing {
  const origin = originsOf(session.notebook.book).find(({ differences }) =>
    differences.some(({ is }) => is?.id === item.id),
  );
  const found = origin?.differences.find(({ is }) => is?.id === item.id);
  if (!origin || !found) return nothing;
  return html`<h3>Not as it came</h3>
    <p class="quiet">${otherwiseWords(found)}; from ${startWords(origin.start)}</p>
    ${
      found.what === 'added'
        ? nothing
        : fieldsTold(found).map(
            ({ field, says, was, is }) => html`<dl class="sides" aria-label=${field}>
              <dt>${field} as it came</dt>
              <dd>${was === undefined ? html`<span class="quiet">none</span>` : drawSaying(says, was, room)}</dd>
              <dt>${field} here</dt>
              <dd>${is === undefined ? html`<span class="quiet">none</span>` : drawSaying(says, is, room)}</dd>
            </dl>`,
          )
    }`;
}
