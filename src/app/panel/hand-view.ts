import { html, nothing, type TemplateResult } from 'lit';
import type { Item } from '../../notebook/index.ts';
import { apartWords, changesInShort, checkStateWords, saidWords } from '../../record/index.ts';
import {
  answerComment,
  type Checked,
  checkedAt,
  closeComment,
  raiseComment,
  setOwnTolerance,
  toleranceOf,
} from '../../review/index.ts';
import { saidNow } from '../checking/said-now.ts';
import type { Session } from '../session/session.ts';

/** So many changes are told of what is stale; the rest is counted. */
const TOLD = 8;

/**
 * What the checker says of the line or cell in hand: its value by hand or its mark, how far that is from the result and to
 * which tolerance, what has changed since, and the comments on it.
 */
export function drawHand(session: Session, item: Item): TemplateResult | typeof nothing {
  const row = rowInHand(session, item);
  // A column is checked cell by cell where it is computed, as a whole where it is entered.
  if (item.kind === 'formula column' && row === undefined) return nothing;
  const one = checkedAt(session.notebook, item, item.kind === 'input column' ? undefined : row);
  const { notebook, units } = session;
  const apart = apartWords(notebook, one, units);
  const where = row === undefined || item.kind === 'input column' ? '' : `, row ${row + 1}`;
  return html`<h3>${one.is === 'entry' ? 'Seen at its source' : `Checked by hand${where}`}</h3>
    <div class="hand">
      <quay-hand-field .session=${session} .checked=${one}></quay-hand-field>
      <p class="state ${one.state.replace(' ', '-')}">
        ${checkStateWords[one.state]}${apart === '' ? nothing : html` <span class="quiet">${apart}</span>`}${drawSaid(one)}
      </p>
      ${one.verdict?.kind === 'unread' ? html`<p class="problem">${one.verdict.problem.message}</p>` : nothing}
      ${changesInShort(notebook, one.changes, TOLD, item.sheet).map((words) => html`<p class="changed">${words}</p>`)}
      ${one.hand ? drawTolerance(session, one) : nothing}
      ${session.checker === '' ? drawInitials(session) : nothing}
      ${one.open.map((comment) => drawComment(session, comment))}
      ${drawField('comment', 'raise a comment', (text) => isSaid(session) && session.apply(raiseComment(notebook, one.subject, { ...saidNow(session), text })).ok)}
    </div>`;
}

function rowInHand({ place }: Session, item: Item): number | undefined {
  if (!('table' in item)) return undefined;
  const [, row] = /^r(\d+)$/.exec(place?.item ?? '') ?? [];
  return row === undefined ? undefined : Number(row);
}

function drawSaid({ hand, seen }: Checked): TemplateResult | typeof nothing {
  const one = hand ?? seen;
  if (!one) return nothing;
  return html`<span class="quiet">, ${saidWords(one)}</span>`;
}

/** The tolerance of one hand value, where it is another than that of the review. */
function drawTolerance(session: Session, { hand }: Checked): TemplateResult | typeof nothing {
  if (!hand) return nothing;
  const { review } = session.notebook.book;
  const set = (typed: string): void => {
    if (typed === (hand.tolerance ?? '')) return;
    session.apply(setOwnTolerance(hand, typed === '' ? undefined : typed));
  };
  return html`<label>
    <span class="quiet">tolerance</span>
    <input
      placeholder=${toleranceOf(review, {})}
      .value=${hand.tolerance ?? ''}
      @change=${({ target }: Event) => set((target as HTMLInputElement).value.trim())}
    />
  </label>`;
}

function drawInitials(session: Session): TemplateResult {
  return html`<label>
    <span class="quiet">initials</span>
    <input maxlength="40" @change=${({ target }: Event) => session.setChecker((target as HTMLInputElement).value)} />
  </label>`;
}

function drawComment(session: Session, comment: Checked['open'][number]): TemplateResult {
  return html`<div class="comment">
    <p>${comment.text} <span class="quiet">${saidWords(comment)}</span></p>
    ${comment.answers.map((one) => html`<p class="answer">${one.text} <span class="quiet">${saidWords(one)}</span></p>`)}
    ${drawField('answer', 'answer', (text) => isSaid(session) && session.apply(answerComment(comment, { ...saidNow(session), text })).ok)}
    <button class="fix" @click=${() => isSaid(session) && session.apply(closeComment(comment, saidNow(session)))}>close</button>
  </div>`;
}

/** A field of words, entered with Enter or by its button. */
function drawField(kind: string, words: string, enter: (text: string) => boolean): TemplateResult {
  const take = (field: HTMLInputElement | null | undefined): void => {
    const text = field?.value.trim() ?? '';
    if (field && text !== '' && enter(text)) field.value = '';
  };
  return html`<div class="say">
    <input
      aria-label=${words}
      placeholder=${kind}
      maxlength="4000"
      @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && take(event.target as HTMLInputElement)}
    />
    <button
      class="fix"
      @click=${({ target }: Event) => take((target as HTMLElement).parentElement?.querySelector('input'))}
    >
      ${words}
    </button>
  </div>`;
}

const isSaid = ({ checker }: Session): boolean => checker !== '';
