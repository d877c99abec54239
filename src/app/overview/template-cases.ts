import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Book, Case, Cases } from '../../document/index.ts';
import { PROGRAM_VERSION } from '../../record/index.ts';
import { enteredInProject, type ProjectCase, putCaseEdit, takeCaseBackEdit } from '../../review/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { Session } from '../session/session.ts';
import { drawSign } from '../style/signs.ts';
import { placeOfId } from '../view-model/places.ts';
import { type CaseRun, caseRunOf, isRunStale, runCases, stopCases } from './case-runs.ts';
import { CaseRunsController } from './case-runs-controller.ts';
import { goToId } from './go-to-id.ts';

/** So many results are told beside a case; the rest is counted. */
const TOLD = 6;

type Which = 'published' | 'all';

/** A template as it is shipped now, with its cases. */
export interface Shipped {
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

/** The cases of one template on the formulas that a book has now; it draws into the tree of its page. */
export class TemplateCases extends LitElement {
  static override properties = {
    session: { attribute: false },
    shipped: { attribute: false },
    content: { attribute: false },
    which: { state: true },
    told: { state: true },
  };
  declare session: Session;
  declare shipped: Shipped;
  /** The book as it stands: another one, and it is drawn again. */
  declare content: Book;
  declare which: Which;
  /** Why the inputs of a case cannot be put on the sheets. */
  declare told: string;

  constructor() {
    super();
    this.which = 'published';
    this.told = '';
    new CaseRunsController(this);
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  override render(): TemplateResult {
    const { session, shipped } = this;
    const run = caseRunOf(session, shipped.id);
    const of = (which: Which): readonly Case[] =>
      shipped.cases.cases.filter(({ kind }) => which === 'all' || kind === 'published');
    const radio = (which: Which, words: string): TemplateResult => html`<label>
      <input
        type="radio"
        name=${`which of ${shipped.id}`}
        .checked=${this.which === which}
        ?disabled=${run?.isRunning === true}
        @change=${() => {
          this.which = which;
        }}
      />${words}
    </label>`;
    const begin = (): void => runCases(session, shipped.book, shipped.id, of(this.which));
    return html`<h3>Cases of the template ${shipped.title}</h3>
      <p class="words quiet">
        Worked examples that the template ${shipped.id} of Quaybook ${PROGRAM_VERSION} is checked with, run on the formulas of this
        book, with the template’s entries where a case has none. Nothing in the book changes.
      </p>
      <div class="words fields tools">
        <fieldset>
          <legend class="unseen">Which cases</legend>
          ${radio('published', `${writeNumber(of('published').length)} published examples`)}
          ${radio('all', `all ${writeNumber(of('all').length)} cases`)}
        </fieldset>
        ${
          run?.isRunning
            ? html`<button class="act" @click=${() => stopCases(session, shipped.id)}>Stop</button>`
            : html`<button class="act" @click=${begin}>Run the cases</button>`
        }
        ${run?.isRunning ? html`<progress max=${run.count} .value=${run.results.length} aria-label="cases run"></progress>` : nothing}
      </div>
      ${run ? this.#progress(run) : nothing}
      ${this.told === '' ? nothing : html`<p class="words why" role="alert">${this.told}</p>`}
      ${this.#list(shipped, of(this.which), run?.results ?? [])}`;
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
    return html`<table aria-label=${`Cases of the template ${shipped.title}`}>
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
    const { example: shown } = this.session.notebook.book;
    const isShown = shown?.template === shipped.id && shown.case === example.id;
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
        ${through.map((id) => (placeOfId(this.session.notebook, id) ? html`<button @click=${() => goToId(this.session, id)}>${id}</button>` : html`<s>${id}</s>`))}
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
