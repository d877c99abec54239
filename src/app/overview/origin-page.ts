import { html, LitElement, nothing, type TemplateResult } from 'lit';
import type { NamedPart } from '../../notebook/index.ts';
import { fieldsTold, labelOfPart, math, otherwiseWords, startWords, symbolMath } from '../../record/index.ts';
import {
  changedSince,
  idOfDifference,
  type OriginDifference,
  type OtherField,
  originsOf,
  projectOrigin,
  type SheetOrigin,
  sheetsLacking,
  templatesOf,
} from '../../review/index.ts';
import { writeNumber } from '../../units/index.ts';
import type { Session } from '../session/session.ts';
import { drawSaying } from '../sheet/line/formula-view.ts';
import { shippedTemplates } from '../shipped/templates.ts';
import { drawMarkup } from '../style/markup.ts';
import { drawSign } from '../style/signs.ts';
import { overviewTitles } from '../view-model/page-view.ts';
import { AskedHeading } from './asked-heading.ts';
import { goToId } from './go-to-id.ts';
import { originStyles } from './origin-styles.ts';
import type { Shipped } from './template-cases.ts';

/** How many em of formula stand side by side. */
const ROOM = 15;

/** So many lines are told of a template that has changed; the rest is counted. */
const TOLD = 6;

/** A page of the book: what its sheets were when they came, and the cases of their template on the formulas they have now. */
export class OriginPage extends LitElement {
  static override properties = {
    session: { attribute: false },
    shipped: { state: true },
    told: { state: true },
  };
  static override styles = originStyles;
  declare session: Session;
  /** The templates that sheets came from, as they are shipped now, once they are fetched. */
  declare shipped: readonly Shipped[];
  /** Why something cannot be had. */
  declare told: string;
  /** The templates that were fetched last. */
  #fetched: readonly string[] = [];

  constructor() {
    super();
    this.shipped = [];
    this.told = '';
    new AskedHeading(this, ({ kind }) => kind === 'book', 'after');
  }

  protected override willUpdate(): void {
    if (this.hasAttribute('paper')) return;
    const ids = templatesOf(this.session.notebook.book);
    if (ids.join() !== this.#fetched.join()) void this.#fetch(ids);
  }

  async #fetch(ids: readonly string[]): Promise<void> {
    this.#fetched = ids;
    const wanted = shippedTemplates.filter(({ id }) => ids.includes(id));
    try {
      const found = await Promise.all(
        wanted.map(
          async ({ id, title, verified }): Promise<Shipped> => ({ id, title, ...(await verified()) }),
        ),
      );
      // By now sheets of others may have come.
      if (this.#fetched === ids)
        this.shipped = found.toSorted((a, b) => ids.indexOf(a.id) - ids.indexOf(b.id));
    } catch (error) {
      this.told = `A template cannot be had: ${error instanceof Error ? error.message : String(error)}`;
    }
  }

  override render(): TemplateResult {
    const { session, shipped } = this;
    const { book } = session.notebook;
    const own = originsOf(book);
    const origins =
      own.length > 0 ? own : shipped.flatMap((one) => projectOrigin(one.book, one.id, book).sheets);
    return html`<div class="page">
      <slot name="title-block"></slot>
      <h2 tabindex="-1">${overviewTitles.origin}</h2>
      <p class="words quiet">
        Each sheet that came from a template or from another book is held against what it was then. What is entered is the
        book’s own; another formula, unit, name or description, a stated value, and lines that came or went are listed.
      </p>
      ${own.length > 0 ? nothing : html`<p class="words quiet">${this.#untold()}</p>`}
      ${shipped.map((one) => this.#since(one))} ${this.#sheets(origins)} ${this.#lacking()}
      ${this.told === '' ? nothing : html`<p class="words why" role="alert">${this.told}</p>`}
      ${shipped.map((one) => html`<quay-template-cases .session=${session} .shipped=${one} .content=${book}></quay-template-cases>`)}
    </div>`;
  }

  /** What is to be said where no sheet knows where it came from. */
  #untold(): string {
    const [first] = this.shipped;
    return first
      ? `The book was started from ${first.title} before sheets kept what they were; they are held against the template as it is shipped now.`
      : 'No sheet of this book came from a template or another book.';
  }

  /** Whether a template is another by now; that makes no line of the book look changed. */
  #since({ id, title, book }: Shipped): TemplateResult | typeof nothing {
    const changed = changedSince(book, id, this.session.notebook.book);
    if (changed.length === 0) return nothing;
    return html`<p class="words since">
      The template ${title} has changed since the sheets came: ${inShort(changed.map(idOfDifference))}. That changes nothing here, nor
      is it listed below.
    </p>`;
  }

  /** Sheets of the templates that the book has not. */
  #lacking(): TemplateResult | typeof nothing {
    const { book } = this.session.notebook;
    const lacking = this.shipped.flatMap(({ id, title, book: template }) => {
      const sheets = sheetsLacking(template, id, book);
      return sheets.length === 0 ? [] : [{ title, sheets }];
    });
    if (lacking.length === 0) return nothing;
    return html`<h3>Not in this book</h3>
      <ul class="words same lacking">
        ${lacking.map(
          ({ title, sheets }) => html`<li>
            <span class="quiet">of the template ${title}, deleted or never brought:</span>
            ${sheets.map((sheet) => sheet.title || sheet.key).join(', ')}
          </li>`,
        )}
      </ul>`;
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
                ${one.is ? html`<button @click=${() => goToId(this.session, part.id)}>${labelOfPart(part)}</button>` : html`<s>${labelOfPart(part)}</s>`}
                <div class="quiet">${drawSign('otherwise')} ${otherwiseWords(one)}</div>
              </td>`
        }
        <td class="side" data-side="as it came">${side(field, 'was')}</td>
        <td class="side" data-side="here">${side(field, 'is')}</td>
      </tr>`,
    )}`;
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
