import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { Prose } from '../../document/index.ts';
import { drawUtilisations } from '../../figures/index.ts';
import { type Quantity, writeUtilisation } from '../../notebook/index.ts';
import { math, symbolMath } from '../../record/index.ts';
import type { CellPlace } from '../session/place.ts';
import { labelOf, localName } from '../session/places.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { shownQuantity, shownText } from '../session/shown.ts';
import { drawSign } from '../sheet/signs.ts';
import { drawMarkup } from '../style/markup.ts';
import { mathsStyles } from '../style/maths-styles.ts';
import { type ListedCheck, type ListedProblem, listChecks, listProblems, listProse } from './book-lists.ts';
import { overviewStyles } from './overview-styles.ts';

/** A page over the whole book: every check with its verdict, every problem, every open item and assumption. */
export class Overview extends LitElement {
  static override properties = { session: { attribute: false } };
  static override styles = [mathsStyles, overviewStyles];
  declare session: Session;

  constructor() {
    super();
    new SessionController(this, ({ kind }) => kind === 'book' || kind === 'units');
  }

  override render(): TemplateResult {
    const { notebook } = this.session;
    const checks = listChecks(notebook);
    const problems = listProblems(notebook);
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">All checks</h2>
      ${
        checks.length === 0
          ? html`<p class="words quiet">
              The book has no check yet. A check compares a demand with a capacity; insert one from the menu of a line.
            </p>`
          : html`<div class="words">${drawMarkup(drawUtilisations(notebook).svg)}</div>
              ${this.#checks(checks)}`
      }
      ${this.#problems(problems)} ${this.#prose('Open items', 'open item')} ${this.#prose('Assumptions', 'assumption')}
    </div>`;
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector('h2')?.focus({ preventScroll: true });
  }

  #checks(checks: readonly ListedCheck[]): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          <th scope="col" class="sheet">Sheet</th>
          <th scope="col" class="name">Symbol</th>
          <th scope="col">Description</th>
          <th scope="col" class="number">Demand</th>
          <th scope="col" class="number">Capacity</th>
          <th scope="col" class="number">Utilisation</th>
          <th scope="col" class="verdict">Verdict</th>
        </tr>
      </thead>
      <tbody>
        ${checks.map((check, at) => this.#check(check, checks[at - 1]?.item.sheet))}
      </tbody>
    </table>`;
  }

  #check({ item, place, verdict, why }: ListedCheck, before: string | undefined): TemplateResult {
    const verdictCell = verdict
      ? html`<span class=${verdict.holds ? 'holds' : 'fails'}
          >${drawSign(verdict.holds ? 'holds' : 'fails')} ${verdict.holds ? 'holds' : 'fails'}</span
        >`
      : html`<span class="quiet" title=${why ?? ''}>no value</span>`;
    const use =
      verdict?.utilisation === undefined ? '' : writeUtilisation(verdict.utilisation, verdict.holds);
    return html`<tr class="goes">
      <td class="sheet${before === item.sheet ? ' again' : ''}">${this.#sheetTitle(item.sheet)}</td>
      <td class="name">${drawMarkup(math(symbolMath(localName(item))))}</td>
      <td>${this.#goButton(labelOf(item), place)}</td>
      <td class="number">${this.#quantity(verdict?.demand)}</td>
      <td class="number">${this.#quantity(verdict?.capacity)}</td>
      <td class="number use">${use}</td>
      <td class="verdict">${verdictCell}</td>
    </tr>`;
  }

  #quantity(quantity: Quantity | undefined): string {
    if (!quantity) return '';
    const { units, notebook } = this.session;
    return shownText(shownQuantity(quantity.si, quantity.unit, units, notebook.model.registry));
  }

  #problems(problems: readonly ListedProblem[]): TemplateResult {
    if (problems.length === 0)
      return html`<h3>Problems</h3>
        <p class="words quiet">No problem anywhere in the book.</p>`;
    return html`<h3>Problems</h3>
      <table aria-label="Problems">
        <thead class="unseen">
          <tr>
            <th scope="col">Sheet</th>
            <th scope="col">Symbol</th>
            <th scope="col">What is wrong</th>
          </tr>
        </thead>
        <tbody>
          ${problems.map(({ problem, sheet, name, place }, at) => {
            const words = [problem.message, ...problem.hints].join('; ');
            return html`<tr class=${place ? 'goes' : ''}>
              <td class="sheet${problems[at - 1]?.sheet === sheet ? ' again' : ''}">
                ${sheet === '' ? 'the whole book' : this.#sheetTitle(sheet)}
              </td>
              <td class="name">${name === '' ? nothing : drawMarkup(math(symbolMath(name)))}</td>
              <td class=${problem.severity === 'error' ? 'fails' : 'warns'}>
                ${drawSign(problem.severity === 'error' ? 'problem' : 'warning', problem.severity)}
                ${place ? this.#goButton(words, place) : words}
              </td>
            </tr>`;
          })}
        </tbody>
      </table>`;
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
              <td class="sheet${found[at - 1]?.place.sheet === place.sheet ? ' again' : ''}">
                ${this.#sheetTitle(place.sheet)}
              </td>
              <td class="prose">${this.#goButton(text, place)}</td>
            </tr>`,
          )}
        </tbody>
      </table>`;
  }

  #sheetTitle(key: string): string {
    return this.session.notebook.book.sheets.find((sheet) => sheet.key === key)?.title || key;
  }

  /** A button as wide as its row: the whole row leads to the line. */
  #goButton(words: string, place: CellPlace | undefined): TemplateResult {
    return html`<button type="button" ?disabled=${!place} @click=${() => place && this.session.goTo(place)}>
      ${words}
    </button>`;
  }
}
