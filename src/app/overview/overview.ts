import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Problem } from '../../diagnostics/index.ts';
import type { Prose } from '../../document/index.ts';
import { type CheckOrder, drawUtilisations } from '../../figures/index.ts';
import { byNearness, type Item, shareOf, type Verdict, writeUtilisation } from '../../notebook/index.ts';
import {
  appliesInWords,
  type FoundCheck,
  findingsOf,
  isByStated,
  labelOf,
  localName,
  math,
  noProblemWords,
  notYetWords,
  problemInWords,
  sheetOf,
  shownSides,
  symbolMath,
  typesetFormula,
} from '../../record/index.ts';
import { placeOfProblem } from '../findings/finding-places.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { drawFormula } from '../sheet/line/formula-view.ts';
import { barStyles, utilisationBar } from '../sheet/line/utilisation-bar.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { OwnWidth } from '../style/own-width.ts';
import { drawSign } from '../style/signs.ts';
import { type OverviewPart, overviewTitles } from '../view-model/page-view.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';
import { drawLinkList } from './link-list.ts';
import { listProse } from './listed-prose.ts';
import { overviewStyles } from './overview-styles.ts';
import { drawStatedList } from './stated-list.ts';

/** From so many px on, the wide drawing has letters of a readable size. */
const WIDE = 780;

const checkOrders: readonly { readonly order: CheckOrder; readonly words: string }[] = [
  { order: 'book', words: 'in the order of the book' },
  { order: 'nearest', words: 'nearest to the limit first' },
];

/** A page over the whole book: every check with its verdict, every problem and remark, every stated and linked value, every open item and assumption. */
export class Overview extends LitElement {
  static override properties = { session: { attribute: false }, narrow: { state: true } };
  static override styles = [mathsStyles, overviewStyles, barStyles];
  declare session: Session;
  /** Whether the page is too narrow for the wide drawing, and for demand and capacity in columns of their own. */
  declare narrow: boolean;
  /** Whether a list was asked for that does not have the focus yet. */
  #asked = true;

  constructor() {
    super();
    this.narrow = false;
    new OwnWidth(this, (width) => {
      // Paper has all columns, whatever it is measured in.
      this.narrow = width < WIDE && !this.hasAttribute('paper');
    });
    new SessionController(this, ({ kind }) => {
      if (kind === 'place') this.#asked = true;
      return kind !== 'kept';
    });
  }

  override render(): TemplateResult {
    const { notebook } = this.session;
    // Paper has the bars within the table.
    const onPaper = this.hasAttribute('paper');
    const { problems, remarks, checks: inBook } = findingsOf(notebook);
    const checks =
      this.session.checkOrder === 'book'
        ? inBook
        : inBook.toSorted((a, b) => byNearness(a.verdict, b.verdict));
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 id="checks" tabindex="-1">${overviewTitles.checks}</h2>
      ${
        checks.length === 0
          ? html`<p class="words quiet">
              The book has no check yet. A check compares a demand with a capacity; insert one from the menu of a line.
            </p>`
          : onPaper
            ? html`${this.#checks(checks.filter((one) => !one.inapplicable))}${this.#notApplying(checks)}`
            : html`${this.#orders(checks.length)}${this.#bars()} ${this.#checks(checks)}`
      }
      <h3 id="problems" tabindex="-1">${overviewTitles.problems}</h3>
      ${
        problems.length === 0
          ? html`<p class="words quiet">${noProblemWords(this.session.computing)}</p>`
          : this.#problems('Problems', problems)
      }
      ${
        remarks.length === 0
          ? nothing
          : html`<h3 id="remarks" tabindex="-1">${overviewTitles.remarks}</h3>
              ${this.#problems('Remarks', remarks)}`
      }
      <h3 id="stated" tabindex="-1">${overviewTitles.stated}</h3>
      ${drawStatedList(this.session, {
        sheetCell: (key, before) => this.#sheetCell(key, before),
        goButton: (words, place) => this.#goButton(words, place),
      })}
      ${drawLinkList(this.session, {
        sheetCell: (key, before) => this.#sheetCell(key, before),
        goButton: (words, place) => this.#goButton(words, place),
      })}
      ${this.#prose('Open items', 'open item')} ${this.#prose('Assumptions', 'assumption')}
    </div>`;
  }

  /** In which order the checks stand, where there are several. */
  #orders(count: number): TemplateResult | typeof nothing {
    if (count < 2) return nothing;
    const { session } = this;
    return html`<fieldset class="words order">
      <legend>Order</legend>
      ${checkOrders.map(
        ({ order, words }) => html`<label>
          <input type="radio" name="order" .checked=${session.checkOrder === order} @change=${() => session.setCheckOrder(order)} />${words}
        </label>`,
      )}
    </fieldset>`;
  }

  #bars(): TemplateResult {
    const bars = drawUtilisations(
      this.session.notebook,
      this.narrow ? 'narrow' : 'wide',
      this.session.checkOrder,
    );
    return html`<div class="words bars" @click=${this.#goToBar}>${bars.map(({ svg }) => drawMarkup(svg))}</div>`;
  }

  override updated(): void {
    if (this.#asked && this.session.overview && !this.hasAttribute('paper'))
      this.#show(this.session.overview);
    this.#asked = false;
  }

  /** A bar leads where its check does in the table below, which is for the keyboard too. */
  readonly #goToBar = ({ target }: Event): void => {
    const bar = target instanceof Element ? target.closest<SVGElement>('[data-check]') : null;
    const place = bar?.dataset.check && placeOfId(this.session.notebook, bar.dataset.check);
    if (place) this.session.jumpTo(place);
  };

  /** The focus goes to the heading of a list, its first line a Tab away. */
  #show(part: OverviewPart): void {
    const heading = this.renderRoot.querySelector<HTMLElement>(`#${part}`);
    heading?.focus({ preventScroll: true });
    // The checks begin where the page does.
    if (part === 'checks') this.scrollTop = 0;
    else heading?.scrollIntoView({ block: 'start' });
  }

  #checks(checks: readonly FoundCheck[]): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          <th scope="col" class="sheet">Sheet</th>
          <th scope="col" class="name">Symbol</th>
          <th scope="col" class="described">Description</th>
          ${
            this.narrow
              ? nothing
              : html`<th scope="col" class="number">Demand</th>
                  <th scope="col" class="number">Capacity</th>`
          }
          <th scope="col" class="number">Utilisation</th>
          <th scope="col" class="verdict">Verdict</th>
          ${this.hasAttribute('paper') ? html`<td class="bar-cell"></td>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${checks.map((check, at) => this.#check(check, checks[at - 1]?.item.sheet))}
      </tbody>
    </table>`;
  }

  #check(found: FoundCheck, before: string | undefined): TemplateResult {
    const { item, verdict, inapplicable } = found;
    const verdictCell = verdict
      ? drawVerdict(verdict, isByStated(this.session.notebook, found))
      : inapplicable
        ? html`<span class="quiet" title=${inapplicable.message}>${drawSign('idle')} does not apply</span>`
        : html`<span class="quiet" title=${this.#whyNot(item)}>${notYetWords(this.session.computing) ?? 'no value'}</span>`;
    const share = verdict && shareOf(verdict);
    const use = share === undefined ? '' : writeUtilisation(share, verdict?.holds === true);
    const { units, notebook } = this.session;
    const sides = verdict && shownSides(verdict, units, notebook.model.registry);
    const eased = verdict && notebook.easedBy(item.id);
    return html`<tr class="goes">
      ${this.#sheetCell(item.sheet, before)}
      <td class="name">${drawMarkup(math(symbolMath(localName(item))))}</td>
      <td>
        ${this.#goButton(labelOf(item), placeOfId(this.session.notebook, item.id))}
        ${this.narrow && sides?.demand ? html`<div class="quiet sides"><span>demand ${sides.demand},</span> <span>capacity ${sides.capacity}</span></div>` : nothing}
        ${inapplicable && item.applies && !this.hasAttribute('paper') ? html`<div class="quiet condition">${this.#condition(item)}</div>` : nothing}
        ${verdict?.outOfRange ? html`<div class="out-of-range">${this.#inWords(verdict.outOfRange, item.sheet).message}</div>` : nothing}
        ${eased ? html`<div class="out-of-range">${this.#inWords(eased, item.sheet).message}</div>` : nothing}
      </td>
      ${
        this.narrow
          ? nothing
          : html`<td class="number">${sides?.demand ?? ''}</td>
              <td class="number">${sides?.capacity ?? ''}</td>`
      }
      <td class="number use">${use}</td>
      <td class="verdict">${verdictCell}</td>
      ${this.hasAttribute('paper') ? html`<td class="bar-cell">${share === undefined ? nothing : html`<span class=${verdict?.holds ? 'holds' : 'fails'}>${utilisationBar(share)}</span>`}</td>` : nothing}
    </tr>`;
  }

  /** On paper the checks that do not apply follow one another, sheet by sheet: each has its condition on its sheet. */
  #notApplying(checks: readonly FoundCheck[]): TemplateResult {
    return html`${this.session.notebook.book.sheets.map(({ key, title }) => {
      const of = checks.filter(({ inapplicable, item }) => inapplicable && item.sheet === key);
      if (of.length === 0) return nothing;
      return html`<p class="words not-applying">
        <b>Do not apply on ${title || key}:</b>
        ${of.map(({ item }, at) => html`${at === 0 ? nothing : '; '}${drawMarkup(math(symbolMath(localName(item))))} ${labelOf(item)}`)}
      </p>`;
    })}`;
  }

  /** Where a check applies, in lines that fit the column. */
  #condition(item: FoundCheck['item']): TemplateResult | typeof nothing {
    const applies = appliesInWords(this.session.notebook, item);
    if (!applies) return nothing;
    const most = this.narrow ? 13 : 20;
    return html`applies where ${applies.whole ? drawFormula(typesetFormula(applies, most), 'symbols') : applies.text.trim()}`;
  }

  /** Why a check has no value. */
  #whyNot({ id, sheet }: Item): string {
    const result = this.session.notebook.result(id);
    return 'problem' in result ? this.#inWords(result.problem, sheet).message : 'blank';
  }

  #inWords(found: Problem, sheet: string): Problem {
    return problemInWords(found, this.session.notebook, sheet);
  }

  /** Problems or remarks: where, what is wrong, and what would mend it. */
  #problems(title: string, problems: readonly Problem[]): TemplateResult {
    return html`<table aria-label=${title}>
      <thead class="unseen">
        <tr>
          <th scope="col">Sheet</th>
          <th scope="col">Symbol</th>
          <th scope="col">What is wrong</th>
        </tr>
      </thead>
      <tbody>
        ${problems.map((problem, at) => this.#problem(problem, problems[at - 1]))}
      </tbody>
    </table>`;
  }

  #problem(problem: Problem, before: Problem | undefined): TemplateResult {
    const sheet = sheetOf(problem);
    const name = problem.cell?.slice(sheet.length + 1) ?? '';
    const place = placeOfProblem(this.session.notebook, problem);
    const told = this.#inWords(problem, sheet);
    const words = html`${told.message}${told.hints.map((hint) => html`<span class="quiet">; ${hint}</span>`)}`;
    const sign = problem.severity === 'error' ? 'problem' : 'warning';
    return html`<tr class=${place ? 'goes' : ''}>
      ${this.#sheetCell(sheet, before && sheetOf(before))}
      <td class="name">${name === '' ? nothing : drawMarkup(math(symbolMath(name)))}</td>
      <td class="told ${sign}">${drawSign(sign, problem.severity)} ${place ? this.#goButton(words, place) : words}</td>
    </tr>`;
  }

  #prose(title: string, role: Prose['role']): TemplateResult | typeof nothing {
    const found = listProse(this.session.notebook, role);
    if (found.length === 0) return nothing;
    return html`<h3>${title}</h3>
      <table aria-label=${title}>
        <thead class="unseen">
          <tr>
            <th scope="col">Sheet</th>
            <th scope="col">${title}</th>
          </tr>
        </thead>
        <tbody>
          ${found.map(
            ({ text, place }, at) => html`<tr class="goes">
              ${this.#sheetCell(place.sheet, found[at - 1]?.place.sheet)}
              <td class="prose">${this.#goButton(text, place)}</td>
            </tr>`,
          )}
        </tbody>
      </table>`;
  }

  /** The sheet in the margin, seen once for all its rows; `before` is the sheet of the row above. */
  #sheetCell(key: string, before: string | undefined): TemplateResult {
    const { book } = this.session.notebook;
    const title = book.sheets.find((sheet) => sheet.key === key)?.title || key || 'the whole book';
    return html`<td class="sheet"><span class=${key === before ? 'unseen' : ''}>${title}</span></td>`;
  }

  /** A button as wide as its row: the whole row leads to the line. */
  #goButton(words: string | TemplateResult, place: CellPlace | undefined): TemplateResult {
    return html`<button type="button" ?disabled=${!place} @click=${() => place && this.session.jumpTo(place)}>
      ${words}
    </button>`;
  }
}

/** A verdict with its sign; one that rests on values beyond their permitted ranges, or on stated ones alone, has theirs. */
function drawVerdict({ holds, outOfRange }: Verdict, byStated: boolean): TemplateResult {
  const word = holds ? 'holds' : 'fails';
  const told = holds && outOfRange ? 'beyond a permitted range:' : byStated ? 'only by a stated value:' : '';
  const [name, sign] = told === '' ? ([word, word] as const) : (['out-of-range', 'warning'] as const);
  return html`<span class=${name}>${drawSign(sign, told)} ${word}</span>`;
}
