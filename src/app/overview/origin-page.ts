import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book, Case, Cases } from '../../document/index.ts';
import type { NamedPart } from '../../notebook/index.ts';
import { fieldsTold, labelOfPart, math, otherwiseWords, startWords, symbolMath } from '../../record/index.ts';
import {
  changedSince,
  enteredInProject,
  idOfDifference,
  type OriginDifference,
  type OtherField,
  originsOf,
  type ProjectCase,
  projectOrigin,
  putCaseEdit,
  type SheetOrigin,
  takeCaseBackEdit,
  templateOf,
} from '../../review/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { Session } from '../session/session.ts';
import { drawSaying } from '../sheet/line/formula-view.ts';
import { shippedTemplates } from '../shipped/templates.ts';
import { drawMarkup } from '../style/markup.ts';
import { drawSign } from '../style/signs.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { placeOfId } from '../view-model/places.ts';
import { AskedHeading } from './asked-heading.ts';
import { type CaseRun, caseRunOf, isRunStale, runCases, stopCases } from './case-runs.ts';
import { originStyles } from './origin-styles.ts';

/** How many em of formula stand side by side. */
const ROOM = 15;

/** So many lines and results are told beside a case or a template; the rest is counted. */
const TOLD = 6;

type Which = 'published' | 'all';

interface Shipped {
  readonly id: string;
  readonly title: string;
  readonly book: Book;
  readonly cases: Cases;
}

const kindWords: Readonly<Record<Case['kind'], string>> = {
  published: 'published example',
  memory: 'value from memory',
  independent: 'independent route',
};

/** A page of the book: what its sheets were when they came, and the cases of their template on the formulas they have now. */
export class OriginPage extends LitElement {
  static override properties = {
    session: { attribute: false },
    which: { state: true },
    shipped: { state: true },
    told: { state: true },
  };
  static override styles = originStyles;
  declare session: Session;
  declare which: Which;
  /** The template that most sheets came from, as it is shipped now; undefined while it is fetched, and where there is none. */
  declare shipped: Shipped | undefined;
  /** Why something cannot be had. */
  declare told: string;

  constructor() {
    super();
    this.which = 'published';
    this.shipped = undefined;
    this.told = '';
    new AskedHeading(this, ({ kind }) => kind === 'book', 'after');
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (!this.hasAttribute('paper')) void this.#fetch();
  }

  async #fetch(): Promise<void> {
    const id = templateOf(this.session.notebook.book);
    const template = shippedTemplates.find((one) => one.id === id);
    if (!template) return;
    try {
      this.shipped = { id: template.id, title: template.title, ...(await template.verified()) };
    } catch (error) {
      this.told = `The template cannot be had: ${error instanceof Error ? error.message : String(error)}`;
    }
  }

  override render(): TemplateResult {
    const { book } = this.session.notebook;
    const own = originsOf(book);
    const origins =
      own.length === 0 && this.shipped ? projectOrigin(this.shipped.book, this.shipped.id, book).sheets : own;
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.origin}</h2>
      <p class="words quiet">
        Each sheet that came from a template or from another book is held against what it was then. What is entered is the
        book’s own; another formula, unit, name or description, a stated value, and lines that came or went are listed.
      </p>
      ${own.length > 0 ? nothing : html`<p class="words quiet">${this.#untold()}</p>`}
      ${this.#since()} ${this.#sheets(origins)}
      ${this.told === '' ? nothing : html`<p class="words why" role="alert">${this.told}</p>`}
      ${this.shipped ? this.#cases(this.shipped) : nothing}
    </div>`;
  }

  /** What is to be said where no sheet knows where it came from. */
  #untold(): string {
    return this.shipped
      ? `The book was started from ${this.shipped.title} before sheets kept what they were; they are held against the template as it is shipped now.`
      : 'No sheet of this book came from a template or another book.';
  }

  /** Whether the template is another by now; that makes no line of the book look changed. */
  #since(): TemplateResult | typeof nothing {
    const { shipped } = this;
    if (!shipped) return nothing;
    const changed = changedSince(shipped.book, shipped.id, this.session.notebook.book);
    if (changed.length === 0) return nothing;
    return html`<p class="words since">
      The template has changed since the sheets came: ${inShort(changed.map(idOfDifference))}. That changes nothing here, nor is it
      listed below.
    </p>`;
  }

  #sheets(origins: readonly SheetOrigin[]): TemplateResult | typeof nothing {
    if (origins.length === 0) return nothing;
    const other = origins.filter(({ differences }) => differences.length > 0);
    const same = origins.filter(({ differences }) => differences.length === 0);
    const count = other.reduce((sum, { differences }) => sum + differences.length, 0);
    return html`<p class="words" role="status">
        ${count === 0 ? 'Every line is as it came.' : `${writeNumber(count)} ${count === 1 ? 'line is' : 'lines are'} not as ${count === 1 ? 'it' : 'they'} came.`}
        ${count > 0 && this.session.notebook.book.example ? 'What the case on the sheets states is among them.' : nothing}
      </p>
      ${
        other.length === 0
          ? nothing
          : html`<table aria-label="Lines that are not as they came">
              <thead>
                <tr>
                  <th scope="col" class="name">Symbol</th>
                  <th scope="col" class="what">Line</th>
                  <th scope="col">As it came</th>
                  <th scope="col">Here</th>
                </tr>
              </thead>
              ${other.map(
                ({ sheet, start, differences }) => html`<tbody>
                  <tr class="of-sheet">
                    <td class="name"></td>
                    <th scope="rowgroup" colspan="3">
                      ${sheet.title || sheet.key} <span class="quiet">from ${startWords(start)}</span>
                    </th>
                  </tr>
                  ${differences.map((one) => this.#difference(one))}
                </tbody>`,
              )}
            </table>`
      }
      ${
        same.length === 0
          ? nothing
          : html`<h3>As they came</h3>
              <ul class="words same">
                ${[...new Set(same.map(({ start }) => startWords(start)))].map(
                  (from) => html`<li>
                    <span class="quiet">from ${from}:</span> ${same.flatMap(({ sheet, start }) => (startWords(start) === from ? [sheet.title || sheet.key] : [])).join(', ')}
                  </li>`,
                )}
              </ul>`
      }`;
  }

  #difference(one: OriginDifference): TemplateResult | typeof nothing {
    const part = one.is ?? one.was;
    if (!part) return nothing;
    const fields = fieldsTold(one);
    const rows: readonly (OtherField | undefined)[] = fields.length === 0 ? [undefined] : fields;
    return html`${rows.map(
      (field, at) => html`<tr class=${`${one.what}${at === 0 ? ' first' : ''}`}>
        ${
          at > 0
            ? nothing
            : html`<td class="name" rowspan=${rows.length}>${drawMarkup(math(symbolMath(nameOf(part))))}</td>
              <td class="what" rowspan=${rows.length}>
                ${one.is ? html`<button @click=${() => this.#go(part.id)}>${labelOfPart(part)}</button>` : html`<s>${labelOfPart(part)}</s>`}
                <div class="quiet">${drawSign('otherwise')} ${otherwiseWords(one)}</div>
              </td>`
        }
        <td class="side" data-side="as it came">${side(field, 'was')}</td>
        <td class="side" data-side="here">${side(field, 'is')}</td>
      </tr>`,
    )}`;
  }

  #go(id: string): void {
    const place = placeOfId(this.session.notebook, id);
    if (place) this.session.jumpTo(place);
  }

  #cases(shipped: Shipped): TemplateResult {
    const { session } = this;
    const run = caseRunOf(session);
    const of = (which: Which): readonly Case[] =>
      shipped.cases.cases.filter(({ kind }) => which === 'all' || kind === 'published');
    const radio = (which: Which, words: string): TemplateResult => html`<label>
      <input
        type="radio"
        name="which"
        .checked=${this.which === which}
        ?disabled=${run?.isRunning === true}
        @change=${() => {
          this.which = which;
        }}
      />${words}
    </label>`;
    const begin = (): void =>
      runCases(session, shipped.book, shipped.id, of(this.which), () => this.requestUpdate());
    return html`<h3>Cases of the template</h3>
      <p class="words quiet">
        Worked examples that ${shipped.title} is checked with, run on the formulas of this book, with the template’s entries where a
        case has none. Nothing in the book changes.
      </p>
      <div class="words fields tools">
        <fieldset>
          <legend class="unseen">Which cases</legend>
          ${radio('published', `${writeNumber(of('published').length)} published examples`)}
          ${radio('all', `all ${writeNumber(of('all').length)} cases`)}
        </fieldset>
        ${
          run?.isRunning
            ? html`<button class="act" @click=${() => {
                stopCases(session);
                this.requestUpdate();
              }}>Stop</button>`
            : html`<button class="act" @click=${begin}>Run the cases</button>`
        }
        ${run?.isRunning ? html`<progress max=${run.count} .value=${run.results.length} aria-label="cases run"></progress>` : nothing}
      </div>
      ${run ? this.#progress(run) : nothing} ${this.#list(shipped, of(this.which), run?.results ?? [])}`;
  }

  /** How far the run is, and what it came to. */
  #progress(run: CaseRun): TemplateResult {
    const wrong = run.results.filter(({ report }) => !report.agrees);
    const right = run.results.filter(({ report }) => report.agrees);
    const done =
      run.isRunning || run.results.length < run.count
        ? `${writeNumber(run.results.length)} of ${writeNumber(run.count)} run: `
        : '';
    return html`<p class="words" role="status">
        ${done}${writeNumber(right.length)} agree${right.length === 1 ? 's' : ''}, ${writeNumber(wrong.length)} no longer.
        ${run.failed === undefined ? nothing : html`<span class="why">They could not all be run: ${run.failed}</span>`}
        ${isRunStale(run, this.session.notebook.book) ? html`<span class="since">The formulas have changed since; run them again.</span>` : nothing}
      </p>`;
  }

  /** What no longer agrees first, then what agrees, then what has not been run. */
  #list(shipped: Shipped, wanted: readonly Case[], results: readonly ProjectCase[]): TemplateResult {
    const found = new Map(results.map((one) => [one.report.id, one]));
    const rank = ({ id }: Case): number => {
      const one = found.get(id);
      return one === undefined ? 2 : one.report.agrees ? 1 : 0;
    };
    return html`<table aria-label="Cases of the template">
      <thead>
        <tr>
          <th scope="col" class="verdict">Result</th>
          <th scope="col">Case</th>
          <th scope="col" class="through">Through</th>
          <th scope="col" class="put">Inputs</th>
        </tr>
      </thead>
      <tbody>
        ${wanted.toSorted((a, b) => rank(a) - rank(b)).map((one) => this.#case(shipped, one, found.get(one.id)))}
      </tbody>
    </table>`;
  }

  #case(shipped: Shipped, example: Case, result: ProjectCase | undefined): TemplateResult {
    const { report, through = [] } = result ?? {};
    const wrong = report?.judgements.filter(({ agrees }) => !agrees).map(({ words }) => words) ?? [];
    const why = report?.refused === undefined ? wrong : [report.refused];
    const isShown = this.session.notebook.book.example?.case === example.id;
    return html`<tr>
      <td class="verdict state-sign ${report ? (report.agrees ? 'agrees' : 'differs') : ''}">
        ${
          report
            ? html`${drawSign(report.agrees ? 'holds' : 'fails')} ${report.agrees ? 'agrees' : 'no longer'}`
            : html`<span class="quiet">not run</span>`
        }
      </td>
      <td>
        ${example.title}
        <div class="quiet">${kindWords[example.kind]}: ${example.source}</div>
        ${why.slice(0, TOLD).map((words) => html`<div class="why">${words}</div>`)}
        ${why.length > TOLD ? html`<div class="why">and ${why.length - TOLD} more</div>` : nothing}
      </td>
      <td class="through">
        ${through.map((id) => (placeOfId(this.session.notebook, id) ? html`<button @click=${() => this.#go(id)}>${id}</button>` : html`<s>${id}</s>`))}
        ${report?.agrees === false && through.length === 0 ? html`<span class="quiet">no line that differs</span>` : nothing}
      </td>
      <td class="put">
        ${isShown ? html`<span class="since">on the sheets</span>` : nothing}
        <button
          aria-label=${`${isShown ? 'take back' : 'put on the sheets'}: the inputs of “${example.title}”`}
          @click=${() => (isShown ? this.#takeBack() : this.#put(shipped, example))}
        >
          ${isShown ? 'take back' : 'put on the sheets'}
        </button>
      </td>
    </tr>`;
  }

  #takeBack(): void {
    const edit = takeCaseBackEdit(this.session.notebook.book);
    if (edit) this.session.apply(edit);
  }

  #put(shipped: Shipped, example: Case): void {
    const { session } = this;
    const { book } = session.notebook;
    const entered = enteredInProject(shipped.book, shipped.id, book, example);
    const applied = entered.ok
      ? session.apply(putCaseEdit(book, entered.value, shipped.id, example))
      : entered;
    this.told = applied.ok ? '' : applied.problems.map(({ message }) => message).join('; ');
  }
}

function side(field: OtherField | undefined, which: 'was' | 'is'): TemplateResult | typeof nothing {
  if (!field) return nothing;
  const text = field[which];
  return html`<span class="field quiet">${field.field}</span>
    ${text === undefined ? html`<span class="quiet">none</span>` : drawSaying(field.says, text, ROOM)}`;
}

function nameOf(part: NamedPart): string {
  if (part.kind === 'row') return part.row.name;
  return part.kind === 'table' ? part.table.name : part.column.name;
}

/** The first of several, and how many more there are. */
function inShort(list: readonly string[]): string {
  const more = list.length > TOLD ? ` and ${list.length - TOLD} more` : '';
  return `${list.slice(0, TOLD).join(', ')}${more}`;
}
