import { html, nothing, type TemplateResult } from 'lit';
import { checkStateWords } from '../../../record/index.ts';
import type { CheckState } from '../../../review/index.ts';
import type { Session } from '../../session/session.ts';
import { drawSign, type Sign } from '../../style/signs.ts';

const signs: Readonly<Partial<Record<CheckState, Sign>>> = {
  agrees: 'holds',
  seen: 'holds',
  differs: 'fails',
  'not comparable': 'problem',
  stale: 'waits',
};

/** The checker’s mark of a line: in pencil, apart from the verdict of a check. */
export function drawCheckMark(session: Session, id: string): TemplateResult | typeof nothing {
  const mark = session.checkMark(id);
  if (!mark) return nothing;
  const { state, by, open } = mark;
  const sign = signs[state];
  const comments = open === 0 ? '' : `, ${open} ${open === 1 ? 'comment' : 'comments'} open`;
  const words = `checked by hand: ${checkStateWords[state]}${by === '' ? '' : ` (${by})`}${comments}`;
  return html`<span class="checked ${state.replace(' ', '-')}" title=${words}
    >${sign === undefined ? html`<span class="unseen">${words}</span>` : drawSign(sign, words)}${open === 0 ? nothing : html`<span class="comments" aria-hidden="true">?</span>`}</span
  >`;
}
