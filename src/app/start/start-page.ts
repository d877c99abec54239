import { css, html, LitElement, nothing } from 'lit';
import type { Outcome } from '../../diagnostics/index.ts';
import type { Book } from '../../document/index.ts';
import type { KeptBook, Library } from '../keeping/library.ts';
import { demoBook } from './demo.ts';
import { startStyles } from './start-styles.ts';
import { type ShippedTemplate, shippedTemplates } from './templates.ts';

/** The first page: a new book, a template with what it is for and its limits, recent books, a file, the demo. */
export class StartPage extends LitElement {
  static override properties = {
    library: { attribute: false },
    recent: { state: true },
    chosen: { state: true },
    refusal: { state: true },
    dropping: { state: true },
    notice: { attribute: false },
  };
  declare library: Library;
  declare recent: readonly KeptBook[];
  declare chosen: ShippedTemplate | undefined;
  declare refusal: string | undefined;
  declare dropping: boolean;
  /** What the person should know of the keeping of books here. */
  declare notice: string | undefined;

  static override styles = [startStyles, css``];

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
    void this.#list();
  }

  async #list(): Promise<void> {
    try {
      this.recent = await this.library.list();
    } catch (error) {
      this.refusal = `The books kept in this browser cannot be listed: ${String(error)}`;
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
              Books are ${this.notice}. Each stays in its tab; save it as a file before you leave.
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
                    ? 'None are kept in this browser.'
                    : 'Books you open are kept here, in this browser, as you type. Save them as files too.'
                }</p>`
              : html`<ul class="plain">
                ${this.recent.map(
                  (kept) => html`<li>
                    <button @click=${() => this.#open(kept.id)}>${kept.name || 'Untitled book'}</button
                    ><span>${new Date(kept.changed).toISOString().slice(0, 16).replace('T', ' ')}</span>
                    <button class="quiet" @click=${() => this.#remove(kept)} aria-label=${`Remove ${kept.name}`}>remove</button>
                  </li>`,
                )}
              </ul>`
          }
        </section>
        <section aria-labelledby="templates">
          <h2 id="templates">Templates</h2>
          <div class="templates">
            <ul class="plain" role="list">
              ${shippedTemplates.map(
                (template) => html`<li>
                  <button
                    aria-pressed=${template === this.chosen}
                    @click=${(event: MouseEvent) => this.#choose(template, event)}
                    @dblclick=${() => this.#fetch(template.open)}
                  >
                    ${template.title}
                  </button>
                </li>`,
              )}
            </ul>
            ${this.chosen ? this.#about(this.chosen) : nothing}
          </div>
        </section>
      </div>
      <footer>
        A result here is an aid to the judgement of a licensed engineer, never a design. Local codes come first.
      </footer>
    </main>`;
  }

  /** Shows a template; chosen by keyboard, the button that starts from it is the next thing to press. */
  #choose(template: ShippedTemplate, { detail }: MouseEvent): void {
    this.chosen = template;
    if (detail > 0) return;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.main')?.focus());
  }

  #about(template: ShippedTemplate) {
    const { purpose, standard, scope, limits, cautions } = template.about;
    return html`<article aria-live="polite">
      <h3>${template.title}</h3>
      <p>${purpose}</p>
      <button class="main" @click=${() => this.#fetch(template.open)}>Start from this template</button>
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

  async #add(book: Book): Promise<void> {
    this.#open(await this.library.add(book));
  }

  #fetch(open: () => Promise<Book>): void {
    open().then(
      (book) => this.#add(book),
      (error: unknown) => this.#refuse(error),
    );
  }

  async #file(): Promise<void> {
    const { chooseBookFile } = await import('../keeping/files.ts');
    const opened = await chooseBookFile();
    if (opened?.ok) await this.#add(opened.value);
    else if (opened) this.refusal = opened.problems[0]?.message;
  }

  #over(event: DragEvent): void {
    event.preventDefault();
    this.dropping = true;
  }

  #drop(event: DragEvent): void {
    event.preventDefault();
    this.dropping = false;
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    readFile(file).then(
      (opened) => {
        if (opened.ok) void this.#add(opened.value);
        else this.refusal = `${file.name}: ${opened.problems[0]?.message}`;
      },
      (error: unknown) => this.#refuse(error),
    );
  }

  #refuse(error: unknown): void {
    this.refusal = error instanceof Error ? error.message : String(error);
  }

  #remove(kept: KeptBook): void {
    if (!confirm(`Remove “${kept.name || 'Untitled book'}” from this browser? A saved file stays.`)) return;
    this.library.remove(kept.id).then(
      () => this.#list(),
      (error: unknown) => this.#refuse(error),
    );
  }

  #open(id: string): void {
    location.hash = `#book/${id}`;
  }
}

async function newBook(): Promise<Book> {
  return (await import('../../document/index.ts')).blankBook();
}

async function readFile(file: File): Promise<Outcome<Book>> {
  return (await import('../keeping/files.ts')).readBookFile(file);
}
