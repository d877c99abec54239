import { html, LitElement, nothing, type TemplateResult } from 'lit';
import {
  apartWords,
  changesInShort,
  checkedValue,
  checkStateWords,
  goneWords,
  labelOf,
  localName,
  math,
  saidWords,
  symbolMath,
} from '../../record/index.ts';
import {
  type Checked,
  type Checking,
  type CheckState,
  checkingOf,
  coverageOf,
  setTolerance,
  takeOff,
  toleranceProblem,
  USUAL_TOLERANCE,
} from '../../review/index.ts';
import { writeNumber } from '../../units/index.ts';
import { AskedInitials } from '../checking/asked-initials.ts';
import type { QuayHandField } from '../checking/quay-hand-field.ts';
import type { Session } from '../session/session.ts';
import { drawMarkup } from '../style/markup.ts';
import { drawSign, type Sign } from '../style/signs.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';
import { AskedHeading } from './asked-heading.ts';
import { checkingStyles } from './checking-styles.ts';

/** Which rows are listed, in the words of the page, and in which states. */
interface Choice {
  readonly shown: Shown;
  readonly words: string;
  readonly states: readonly CheckState[];
}

type Shown = 'all' | 'to do' | 'wrong';

const choices: readonly Choice[] = [
  {
    shown: 'all',
    words: 'everything',
    states: ['not checked', 'agrees', 'differs', 'not comparable', 'seen', 'stale', 'idle'],
  },
  { shown: 'to do', words: 'still to check', states: ['not checked', 'stale', 'not comparable'] },
  { shown: 'wrong', words: 'differs or stale', states: ['differs', 'stale', 'not comparable'] },
];

const signs: Readonly<Record<CheckState, Sign | undefined>> = {
  'not checked': undefined,
  agrees: 'holds',
  seen: 'holds',
  differs: 'fails',
  'not comparable': 'problem',
  stale: 'waits',
  idle: 'idle',
};

/** So many changes are told beside what is stale; the rest is counted. */
const TOLD = 3;

/** A page of the book for who checks it: every result with its value by hand, every entry with its mark, sheet by sheet. */
export class CheckingPage extends LitElement {
  static override properties = {
    session: { attribute: false },
    shown: { state: true },
    only: { state: true },
    told: { state: true },
  };
  static override styles = checkingStyles;
  declare session: Session;
  declare shown: Shown;
  /** The key of the one sheet that is listed; '' for all of them. */
  declare only: string;
  /** Why a tolerance is not taken. */
  declare told: string;
  readonly #initials = new AskedInitials(this);

  constructor() {
    super();
    this.shown = 'all';
    this.only = '';
    this.told = '';
    new AskedHeading(this, ({ kind }) => kind !== 'kept' && kind !== 'hand' && kind !== 'order', 'after');
  }

  override render(): TemplateResult {
    const { notebook } = this.session;
    const checking = checkingOf(notebook);
    const states = choices.find(({ shown }) => shown === this.shown)?.states ?? [];
    const listed = checking.all.filter(
      ({ item, state }) => (this.only === '' || item.sheet === this.only) && states.includes(state),
    );
    return html`<div class="page" @done=${this.#goOn}>
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.checking}</h2>
      <p class="words quiet">
        Enter what you came to by hand beside each result, and mark each entry that you have seen at its source. Neither changes
        the calculation. Either is told as stale once anything it rests on is another.
      </p>
      <div class="words fields tools">${this.#tools()}</div>
      ${this.told === '' ? nothing : html`<p class="words why" role="alert">${this.told}</p>`}
      <p class="words" role="status">${coverageWords(checking.all)}</p>
      ${listed.length === 0 ? html`<p class="words quiet">Nothing to list.</p>` : this.#table(listed, checking.all)}
      ${this.#gone(checking)}
    </div>`;
  }

  #tools(): TemplateResult {
    const { session } = this;
    const { book } = session.notebook;
    return html`${this.#initials.draw()}
      <label>
        tolerance
        <input
          type="text"
          class="tolerance"
          maxlength="40"
          placeholder=${USUAL_TOLERANCE}
          .value=${book.review.tolerance ?? ''}
          @change=${this.#setTolerance}
        />
      </label>
      <label>
        sheet
        <select @change=${({ target }: Event) => {
          this.only = (target as HTMLSelectElement).value;
        }}>
          <option value="" ?selected=${this.only === ''}>all sheets</option>
          ${book.sheets.map(({ key, title }) => html`<option value=${key} ?selected=${this.only === key}>${title || key}</option>`)}
        </select>
      </label>
      <fieldset>
        <legend>List</legend>
        ${choices.map(
          ({ shown, words }) => html`<label>
            <input
              type="radio"
              name="shown"
              .checked=${this.shown === shown}
              @change=${() => {
                this.shown = shown;
              }}
            />${words}
          </label>`,
        )}
      </fieldset>`;
  }

  readonly #setTolerance = ({ target }: Event): void => {
    const field = target as HTMLInputElement;
    const { book, model } = this.session.notebook;
    const typed = field.value.trim();
    const before = book.review.tolerance ?? '';
    const problem = typed === '' ? undefined : toleranceProblem(typed, model.registry);
    this.told = problem ? [problem.message, ...problem.hints].join('; ') : '';
    if (problem) field.value = before;
    else if (typed !== before) this.session.apply(setTolerance(typed === '' ? undefined : typed));
  };

  /** Enter leads to the next row that is still to be checked, or to the next one where none is. */
  readonly #goOn = ({ target }: Event): void => {
    const fields = [...this.renderRoot.querySelectorAll<QuayHandField>('quay-hand-field')];
    const at = fields.indexOf(target as QuayHandField);
    const behind = fields.slice(at + 1);
    const isToDo = ({ checked: { state } }: QuayHandField): boolean =>
      state === 'not checked' || state === 'stale' || state === 'not comparable';
    (behind.find(isToDo) ?? fields.slice(0, Math.max(0, at)).find(isToDo) ?? behind[0])?.focus();
  };

  #table(listed: readonly Checked[], all: readonly Checked[]): TemplateResult {
    const { sheets } = this.session.notebook.book;
    return html`<table>
      <thead>
        <tr>
          <th scope="col" class="name">Symbol</th>
          <th scope="col">Description</th>
          <th scope="col" class="number result">Result</th>
          <th scope="col" class="number hand">By hand</th>
          <th scope="col" class="state">State</th>
        </tr>
      </thead>
      ${sheets.map(({ key, title }) => {
        const rows = listed.filter(({ item }) => item.sheet === key);
        if (rows.length === 0) return nothing;
        const { agrees, seen, all: count } = coverageOf(all.filter(({ item }) => item.sheet === key));
        return html`<tbody>
          <tr class="of-sheet">
            <td class="name"></td>
            <th scope="rowgroup" colspan="4">
              ${title || key} <span class="quiet">${writeNumber(agrees + seen)} of ${writeNumber(count)} checked</span>
            </th>
          </tr>
          ${rows.map((one) => this.#row(one))}
        </tbody>`;
      })}
    </table>`;
  }

  #row(one: Checked): TemplateResult {
    const { session } = this;
    const { notebook } = session;
    const { item, row, state, hand, seen, verdict, changes } = one;
    const said = hand ?? seen;
    const apart = apartWords(notebook, one, session.units);
    const sign = signs[state];
    return html`<tr class="goes ${one.is}">
      <td class="name">
        ${drawMarkup(math(symbolMath(localName(item))))}${row === undefined ? nothing : html`<div class="quiet">row ${row + 1}</div>`}
      </td>
      <td>
        <button @click=${() => this.#go(one)}>${labelOf(item)}</button>
        ${verdict?.kind === 'unread' ? html`<div class="why">${verdict.problem.message}</div>` : nothing}
        ${
          changes.length === 0
            ? nothing
            : html`<div class="changes">
                ${changesInShort(notebook, changes, TOLD, item.sheet).map((words) => html`<div>${words}</div>`)}
              </div>`
        }
      </td>
      <td class="number result">${checkedValue(notebook, one, session.units)}</td>
      <td class="hand number"><quay-hand-field .session=${session} .checked=${one}></quay-hand-field></td>
      <td class="state state-sign ${state.replace(' ', '-')}">
        ${sign === undefined ? nothing : drawSign(sign)} <span class=${state === 'not checked' || state === 'idle' ? 'quiet' : ''}>${checkStateWords[state]}</span>
        ${apart === '' ? nothing : html`<div class="apart">${apart}</div>`}
        ${said ? html`<div class="apart">${saidWords(said)}</div>` : nothing}
      </td>
    </tr>`;
  }

  #go({ item, row }: Checked): void {
    const place: CellPlace | undefined = placeOfId(this.session.notebook, item.id);
    if (place) this.session.jumpTo(row === undefined ? place : { ...place, item: `r${row}` });
  }

  /** What was said of lines that the book has no more. */
  #gone({ gone }: Checking): TemplateResult | typeof nothing {
    if (gone.length === 0) return nothing;
    return html`<h3>Of lines that are gone</h3>
      <ul class="words gone">
        ${gone.map((one) => {
          const said = one.hand ?? one.seen;
          if (!said) return nothing;
          return html`<li>
            ${goneWords(one)}
            <button @click=${() => this.session.apply(takeOff(one.hand ? 'handValues' : 'seen', said.id))}>remove</button>
          </li>`;
        })}
      </ul>`;
  }
}

/** How much is checked: `3 of 8 checked: 2 agree or were seen, 1 differs`. */
function coverageWords(all: readonly Checked[]): string {
  const count = coverageOf(all);
  const parts = [
    `${count.agrees + count.seen} agree or were seen`,
    count.differs > 0 ? `${count.differs} differ` : '',
    count['not comparable'] > 0 ? `${count['not comparable']} cannot be compared` : '',
    count.stale > 0 ? `${count.stale} stale` : '',
    `${count['not checked']} not checked`,
  ];
  return `Of ${writeNumber(count.all)} results and entries: ${parts.filter((part) => part !== '').join(', ')}.`;
}
