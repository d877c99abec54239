import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { hashBook } from '../../document/index.ts';
import {
  RECHECK_LIMITS,
  RECHECK_TOLERANCE,
  type RecheckProgress,
  type RecheckReport,
} from '../../recheck/index.ts';
import { countWords, labelOf, math, symbolMath } from '../../record/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { RecheckState } from '../session/recheck-state.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { placeOfId } from '../view-model/places.ts';
import { AskedHeading } from './asked-heading.ts';
import { formStyles } from './form-styles.ts';
import { overviewStyles } from './overview-styles.ts';
import { symbolColumn } from './symbol-column.ts';

/** So many lines of a list are drawn; a table that is not computed twice may be long. */
const MOST = 300;

const stages: Readonly<Record<RecheckProgress['stage'], string>> = {
  translating: 'writing the book as plain spreadsheet formulas',
  computing: 'computing them',
  comparing: 'comparing',
};

/** A line of a list: what it is about, and what is said of it. */
interface Told {
  readonly id: string;
  /** From 1. */
  readonly row?: number;
  readonly words: string;
}

/** A page of the book: what the second engine made of it, on which content and to which tolerance, and what that does not prove. */
export class RecheckPage extends LitElement {
  static override properties = { session: { attribute: false } };
  static override styles = [
    mathsStyles,
    overviewStyles,
    formStyles,
    symbolColumn,
    css`
      .told {
        color: var(--bad);
      }
      progress {
        width: min(22em, 100%);
        accent-color: var(--accent);
      }
      code {
        font: 13px/1.4 var(--code);
        overflow-wrap: anywhere;
      }
      .name {
        width: var(--margin);
        white-space: normal;
        overflow-wrap: anywhere;
      }
    `,
  ];
  declare session: Session;

  constructor() {
    super();
    new AskedHeading(this, ({ kind }) => kind === 'recheck', 'after');
  }

  override render(): TemplateResult {
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.recheck}</h2>
      <div class="words" role="status">${this.#state(this.session.recheck)}</div>
      ${this.session.recheck.kind === 'done' ? this.#report(this.session.recheck.report) : nothing}
      <h3>What it does not prove</h3>
      <p class="words">${RECHECK_LIMITS}</p>
    </div>`;
  }

  #state(state: RecheckState): TemplateResult {
    switch (state.kind) {
      case 'waiting for a pause':
        return html`<p>It begins when you pause.</p>${this.#ask('cancel', 'Cancel')}`;
      case 'waiting for values':
        return html`<p>It waits for values that are being computed.</p>`;
      case 'stopped':
        return html`<p>Computing is stopped. Values that are not there cannot be compared: press Compute, below, to go on.</p>`;
      case 'checking':
        return html`${this.#progress(state.progress)}${this.#ask('cancel', 'Cancel')}`;
      case 'cancelled':
        return html`<p>Cancelled: nothing is checked of the book as it is.</p>${this.#ask('begin', 'Compute twice')}`;
      case 'left out':
        return html`<p>Left out: ${state.reason}.</p>`;
      case 'failed':
        return html`<p class="told">It failed, and nothing is checked: ${state.reason}</p>
          ${this.#ask('begin', 'Try again')}`;
      case 'done':
        return html`<p>${doneWords(state.report)}</p>`;
    }
  }

  #ask(wish: 'cancel' | 'begin', words: string): TemplateResult {
    return html`<p><button class="act" @click=${() => this.session.askRecheck(wish)}>${words}</button></p>`;
  }

  #progress(progress: RecheckProgress | undefined): TemplateResult {
    if (!progress)
      return html`<p>Under way: the first engine computes the book once more, from its file alone.</p>`;
    if (progress.stage !== 'comparing') return html`<p>Under way: ${stages[progress.stage]}.</p>`;
    const { sheet, done, of } = progress;
    const title = this.session.notebook.book.sheets.find(({ key }) => key === sheet)?.title || sheet;
    return html`<p>Under way: ${stages.comparing} ${title}, ${done + 1} of ${countWords(of, 'sheet')}.</p>
      <progress max=${of} .value=${done} aria-label="sheets compared"></progress>`;
  }

  #report(report: RecheckReport): TemplateResult {
    const { findings, indeterminate, notRechecked, resting } = report;
    const { book } = this.session.notebook;
    return html`<p class="words quiet">
        Content <code>${hashBook(book)}</code>; two values agree within ${RECHECK_TOLERANCE}.
      </p>
      ${this.#list(
        'The two differ',
        findings.map((one) => ({ ...one, words: one.message })),
      )}
      ${this.#list(
        'Not decided',
        indeterminate.map((one) => ({ ...one, words: one.message })),
      )}
      ${this.#list(
        'Not computed twice',
        notRechecked.map(({ id, reason, values }) => ({
          id,
          words: `${countWords(values, 'value')}: ${reason}`,
        })),
      )}
      ${this.#list(
        'Results that rest on these',
        resting.map((id) => ({ id, words: this.#label(id) })),
      )}`;
  }

  #label(id: string): string {
    const item = this.session.notebook.model.items.get(id);
    return item ? labelOf(item) : id;
  }

  #list(title: string, all: readonly Told[]): TemplateResult | typeof nothing {
    if (all.length === 0) return nothing;
    const more = all.length - MOST;
    return html`<h3>${title}</h3>
      <table aria-label=${title}>
        <tbody>
          ${all.slice(0, MOST).map((one) => this.#row(one))}
        </tbody>
      </table>
      ${more > 0 ? html`<p class="words quiet">and ${writeNumber(more)} more</p>` : nothing}`;
  }

  #row({ id, row, words }: Told): TemplateResult {
    const place = placeOfId(this.session.notebook, id);
    const at = place && row !== undefined ? { ...place, item: `r${row - 1}` } : place;
    return html`<tr class="goes">
      <td class="name">${drawMarkup(math(symbolMath(id)))}</td>
      <td>
        <button ?disabled=${!at} @click=${() => at && this.session.jumpTo(at)}>${words}</button>
      </td>
    </tr>`;
  }
}

/** How much was computed twice and came to the same. */
function doneWords({
  agree,
  entries,
  withoutValue,
  findings,
  indeterminate,
  notRechecked,
}: RecheckReport): string {
  const left = notRechecked.reduce((sum, { values }) => sum + values, 0);
  const computed = agree - entries + findings.length + indeterminate.length;
  const all = left === 0 ? counted(computed) : `Of ${counted(computed + left)} ${writeNumber(computed)}`;
  const parts = [
    `${all} ${computed === 1 ? 'was' : 'were'} computed twice`,
    left > 0 ? `${writeNumber(left)} not` : '',
    findings.length === 0
      ? 'none differs'
      : `${writeNumber(findings.length)} ${findings.length === 1 ? 'differs' : 'differ'}`,
    indeterminate.length > 0 ? `${writeNumber(indeterminate.length)} not decided` : '',
    entries > 0
      ? `${writeNumber(entries)} ${entries === 1 ? 'entry' : 'entries'} read in the unit twice`
      : '',
    withoutValue > 0 ? `${writeNumber(withoutValue)} without a value in either` : '',
  ];
  return `${parts.filter((part) => part !== '').join('; ')}.`;
}

const counted = (count: number): string =>
  `${writeNumber(count)} computed ${count === 1 ? 'value' : 'values'}`;
