import { html, LitElement, nothing } from 'lit';
import type { Book } from '../../document/index.ts';
import { type ShippedTemplate, shippedTemplates } from '../shipped/templates.ts';
import type { BookStore, ListedBook } from '../storage/book-store.ts';
import { reasonOf } from '../storage/storage-error.ts';
import { dayAndSecond, dayAndTime } from '../view-model/local-time.ts';
import { demoBook } from './demo.ts';
import { startStyles } from './start-styles.ts';

/** The first page: a new book, a template with what it is for and its limits, recent books, a file, the demo. */
export class StartPage extends LitElement {
  static override properties = {
    store: { attribute: false },
    recent: { state: true },
    chosen: { state: true },
    refusal: { state: true },
    dropping: { state: true },
    notice: { attribute: false },
  };
  declare store: BookStore;
  declare recent: readonly ListedBook[];
  declare chosen: ShippedTemplate | undefined;
  declare refusal: string | undefined;
  declare dropping: boolean;
  /** What the person should know of the keeping of books here. */
  declare notice: string | undefined;
  #leave: (() => void) | undefined;

  static override styles = startStyles;

  constructor() {
    super();
    this.recent = [];
    this.chosen = shippedTemplates[0];
    this.refusal = undefined;
    this.dropping = false;
    this.notice = undefined;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#leave = this.store.onNotice(({ kind }) => {
      if (kind === 'list' || kind === 'ready') void this.#list();
    });
    void this.#list();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#leave?.();
  }

  async #list(): Promise<void> {
    try {
      this.recent = await this.store.list();
    } catch (error) {
      this.refusal = `The books kept in this browser cannot be listed: ${reasonOf(error)}`;
    }
  }

  override render() {
    return html`<main
      class=${this.dropping ? 'dropping' : ''}
      @dragover=${this.#over}
      @dragleave=${() => {
        this.dropping = false;
      }}
      @drop=${this.#drop}
    >
      <header>
        <h1>Quaybook</h1>
        <p>
          Calculations for rebuilding wharves, on sheets that check their units, show their numbers and name their
          sources. Everything stays on this machine.
        </p>
      </header>
      ${this.refusal ? html`<p class="refusal" role="alert">${this.refusal}</p>` : nothing}
      ${
        this.notice
          ? html`<p class="refusal" role="status">
              Books are ${this.notice}. Each stays in this tab, and is listed here; save it as a file before you leave.
            </p>`
          : nothing
      }
      <div class="columns">
        <section aria-labelledby="begin">
          <h2 id="begin">Begin</h2>
          <ul class="plain">
            <li><button @click=${() => this.#fetch(newBook)}>New book</button><span>an empty sheet</span></li>
            <li><button @click=${this.#file}>Open a file</button><span>or drop one on this page</span></li>
            <li>
              <button @click=${() => this.#fetch(demoBook)}>Open the demo book</button
              ><span>an invented crane upgrade: basis, piles, fenders, bollards, debris</span>
            </li>
          </ul>
          <h2 id="recent">Recent books</h2>
          ${
            this.recent.length === 0
              ? html`<p class="quiet">${
                  this.notice
                    ? 'No books can be kept in this browser, nor listed from it, now.'
                    : 'Books you open are kept here, in this browser, as you type. Save them as files too.'
                }</p>`
              : html`<ul class="plain">
                ${this.recent.map((kept) => this.#listed(kept))}
              </ul>`
          }
        </section>
        <section aria-labelledby="templates">
          <h2 id="templates">Templates</h2>
          <ul class="templates" role="list">
            ${shippedTemplates.map((template) => this.#template(template))}
          </ul>
          ${this.chosen ? this.#about(this.chosen) : nothing}
        </section>
      </div>
      <footer>
        A result here is an aid to the judgement of a licensed engineer, never a design. Local codes come first.
      </footer>
    </main>`;
  }

  /** A template by its sketch and what it answers; a click anywhere on it chooses it, as its title does by keyboard. */
  #template(template: ShippedTemplate) {
    const { title, picture, about } = template;
    return html`<li
      class=${template === this.chosen ? 'chosen' : ''}
      @click=${(event: MouseEvent) => this.#choose(template, event)}
      @dblclick=${() => this.#fetch(template.open)}
    >
      <div class="picture" .style=${`background-image: url("${picture}")`}></div>
      <button aria-pressed=${template === this.chosen}>${title}</button>
      <p>${about.question ?? about.purpose}</p>
    </li>`;
  }

  /** A book of the list; of several with one name, when each was changed last tells them apart. */
  #listed(kept: ListedBook) {
    const name = kept.name || 'Untitled book';
    const shared = this.recent.some((other) => other !== kept && other.name === kept.name);
    const changed = shared ? dayAndSecond(kept.changed) : dayAndTime(kept.changed);
    return html`<li>
      <button @click=${() => this.#open(kept.id)}>${name}</button><span>${shared ? 'changed ' : ''}${changed}${sheetWords(kept.sheets)}</span>
      ${kept.unsaved === undefined ? nothing : html`<span class="bad">only in this tab: ${kept.unsaved}</span>`}
      <button
        class="quiet"
        @click=${() => this.#remove(kept)}
        aria-label=${`Remove ${name}${shared ? `, changed ${changed}` : ''}`}
      >
        remove
      </button>
    </li>`;
  }

  /** Shows a template, in sight; chosen by keyboard, the button that starts from it is the next thing to press. */
  #choose(template: ShippedTemplate, { detail }: MouseEvent): void {
    this.chosen = template;
    void this.updateComplete.then(() => {
      const begin = this.renderRoot.querySelector<HTMLElement>('.main');
      if (detail === 0) begin?.focus();
      // In a narrow window it stands below the list.
      else begin?.scrollIntoView({ block: 'nearest' });
    });
  }

  #about(template: ShippedTemplate) {
    const { purpose, standard, scope, limits, cautions } = template.about;
    return html`<article aria-live="polite">
      <div class="lead">
        <div>
          <h3>${template.title}</h3>
          <p>${purpose}</p>
        </div>
        <button class="main" @click=${() => this.#fetch(template.open)}>Start from this template</button>
      </div>
      <dl>
        <dt>Standard</dt>
        <dd>${standard}</dd>
        <dt>Scope</dt>
        <dd>${scope}</dd>
        <dt>Limits</dt>
        <dd><ul>${limits.map((limit) => html`<li>${limit}</li>`)}</ul></dd>
        <dt class="caution">Cautions</dt>
        <dd><ul>${cautions.map((caution) => html`<li>${caution}</li>`)}</ul></dd>
      </dl>
    </article>`;
  }

  /** Does what may fail, and says why it has. */
  #attempt(work: () => Promise<void>): void {
    this.refusal = undefined;
    work().catch((error: unknown) => {
      this.refusal = `That did not work: ${reasonOf(error)}`;
    });
  }

  #fetch(open: () => Promise<Book>): void {
    this.#attempt(async () => this.#open(await this.store.add(await open())));
  }

  readonly #file = (): void => {
    this.#attempt(async () => {
      const { chooseBookFile } = await import('../storage/book-file.ts');
      const opened = await chooseBookFile();
      if (opened?.ok) this.#open(await this.store.add(opened.value));
      else if (opened) this.refusal = opened.problems[0]?.message;
    });
  };

  #over(event: DragEvent): void {
    event.preventDefault();
    this.dropping = true;
  }

  #drop(event: DragEvent): void {
    event.preventDefault();
    this.dropping = false;
    const files = [...(event.dataTransfer?.files ?? [])];
    this.#attempt(async () => {
      if (files.length === 0) throw new Error('what was dropped is no file');
      const { readBookFile } = await import('../storage/book-file.ts');
      const refusals: string[] = [];
      const added: string[] = [];
      for (const file of files) {
        if (ROWS.test(file.name)) {
          refusals.push(`${file.name} is no book: open one, and drop the file on a table or a sheet of it`);
          continue;
        }
        const opened = await readBookFile(file);
        if (opened.ok) added.push(await this.store.add(opened.value));
        else refusals.push(`${file.name}: ${opened.problems[0]?.message}`);
      }
      if (refusals.length > 0) this.refusal = refusals.join('\n');
      // One book is opened; of several the person chooses.
      if (files.length === 1 && added[0] !== undefined) this.#open(added[0]);
      else await this.#list();
    });
  }

  #remove({ id, name, changed, unsaved }: ListedBook): void {
    this.#attempt(async () => {
      const book = `“${name || 'Untitled book'}” (changed ${dayAndTime(changed)})`;
      const where = unsaved === undefined ? 'this browser' : 'this tab, where alone it stands';
      const question = (await this.store.isOpen(id))
        ? `${book} is open in another tab. Remove it from ${where} all the same? What is entered there is not kept from then on; the other tab says so.`
        : `Remove ${book} from ${where}? A saved file stays.`;
      if (!confirm(question)) return;
      await this.store.remove(id);
      await this.#list();
    });
  }

  #open(id: string): void {
    location.hash = `#book/${id}`;
  }
}

function sheetWords(sheets: number | undefined): string {
  if (sheets === undefined) return '';
  return sheets === 1 ? ' · 1 sheet' : ` · ${sheets} sheets`;
}

/** Files of rows, which become part of a book. */
const ROWS = /\.(?:csv|tsv|txt|xlsx?|ods)$/i;

async function newBook(): Promise<Book> {
  return (await import('../../document/index.ts')).blankBook();
}
