import { html, nothing, type TemplateResult } from 'lit';
import { statedIn } from '../../../notebook/index.ts';
import { statedWords } from '../../session/stated-words.ts';
import type { LineContext } from './line-source.ts';

/** Says below a line that a value is stated in place of what its formula comes to, why, and what that would be. */
export function statedNote({ session, item }: LineContext): TemplateResult | typeof nothing {
  const { notebook, units } = session;
  const stated = item?.kind === 'formula' ? statedIn(notebook, item) : [];
  if (stated.length === 0) return nothing;
  return html`${stated.map((one) => html`<p class="sentence stated">${statedWords(notebook, one, units)}</p>`)}`;
}
