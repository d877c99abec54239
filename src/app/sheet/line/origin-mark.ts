import { html, nothing, type TemplateResult } from 'lit';
import type { Session } from '../../session/session.ts';
import { drawSign } from '../../style/signs.ts';

/** The mark of a line or column that is otherwise than where its sheet came from. */
export function drawOriginMark(session: Session, id: string): TemplateResult | typeof nothing {
  const mark = session.originMark(id);
  if (mark === undefined) return nothing;
  const words = `not as it came: ${mark}`;
  return html`<span class="otherwise" title=${words}>${drawSign('otherwise', words)}</span>`;
}
