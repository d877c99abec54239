import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { type Book, blankBook } from '../../document/index.ts';
import { openNotebook } from '../../notebook/index.ts';
import { changeList } from '../../record/index.ts';
import { bookOfRevision, compareBooks } from '../../review/index.ts';
import type { Session } from '../session/session.ts';
import { SessionController } from '../session/session-controller.ts';
import { chooseBookFile } from '../storage/book-file.ts';
import { formStyles } from './form-styles.ts';

/** What can be compared: the book as it stands, a file that was opened, or a revision by its id. */
type Side = 'now' | 'file' | string;

/** What has changed from one state of a book to another: two revisions, one and the book as it stands, or a file and one of these. */
export class BookChanges extends LitElement {
  static override properties = {
    session: { attribute: false },
    from: { state: true },
    upTo: { state: true },
    file: { state: true },
    told: { state: true },
  };
  static override styles = [
    formStyles,
    css`
      :host {
        display: block;
      }
      .told {
        color: var(--bad);
      }
      .told-changes {
        margin-block-start: 12px;
        padding: 10px 14px;
        background: var(--margin-tint);
        color: var(--ink);
        font-size: 14px;
        line-height: 1.45;
      }
      .told-changes:focus-visible {
        outline: 2px solid var(--accent);
      }
      .told-changes p {
        margin: 0;
        padding-inline-start: calc(var(--level) * 14px + 18px);
        text-indent: -18px;
        overflow-wrap: anywhere;
      }
      .told-changes p[data-level='0'] {
        font-weight: 600;
      }
      .told-changes p[data-level='0']:not(:first-child) {
        margin-block-start: 10px;
      }
      .told-changes p[data-level='1'] {
        color: var(--ink-soft);
      }
    `,
  ];
  declare session: Session;
  /** Undefined while nothing is compared. */
  declare from: Side | undefined;
  declare upTo: Side;
  declare file: Book | undefined;
  /** Why a file could not be opened. */
  declare told: string;

  constructor() {
    super();
    this.upTo = 'now';
    this.told = '';
    new SessionController(this, ({ kind }) => kind === 'book', 'after');
  }

  /** Compares a revision with the book as it stands. */
  showSince(revision: string): void {
    this.from = revision;
    this.upTo = 'now';
    this.told = '';
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>('.told-changes')?.focus());
  }

  override render(): TemplateResult {
    return html`<div class="fields">
        ${this.#choice('changes from', this.from, (side) => {
          this.from = side;
        })}
        ${this.#choice('to', this.upTo, (side) => {
          this.upTo = side ?? 'now';
        })}
      </div>
      ${this.told === '' ? nothing : html`<p class="told" role="alert">${this.told}</p>`}
      ${
        this.from === undefined
          ? nothing
          : html`<div class="told-changes" tabindex="0" role="group" aria-label="Changes">
            ${this.#changes(this.from, this.upTo).map(drawLine)}
          </div>`
      }`;
  }

  #choice(label: string, chosen: Side | undefined, choose: (side: Side | undefined) => void): TemplateResult {
    const { revisions } = this.session.notebook.book.review;
    const option = (side: string, words: string): TemplateResult =>
      html`<option value=${side} ?selected=${(chosen ?? '') === side}>${words}</option>`;
    return html`<label>
      ${label}
      <select
        aria-label=${label}
        .value=${chosen ?? ''}
        @change=${({ target }: Event) => this.#choose((target as HTMLSelectElement).value, choose)}
      >
        ${label === 'to' ? nothing : option('', 'choose')}
        ${revisions.toReversed().map(({ id, label: words }) => option(id, `revision ${words}`))}
        ${option('now', 'the book as it stands')}
        ${option('file', this.file ? `the file “${this.file.title.subject || this.file.title.project || 'without a title'}”` : 'a file…')}
      </select>
    </label>`;
  }

  #choose(side: string, choose: (side: Side | undefined) => void): void {
    this.told = '';
    if (side === 'file' && !this.file) void this.#openFile(choose);
    else choose(side === '' ? undefined : side);
  }

  /** Asks for the file; where there is none, what was chosen before stays. */
  async #openFile(choose: (side: Side) => void): Promise<void> {
    const opened = await chooseBookFile();
    if (opened?.ok) {
      this.file = opened.value;
      choose('file');
    } else if (opened) this.told = opened.problems.map(({ message }) => message).join('; ');
    this.requestUpdate();
  }

  #changes(from: Side, upTo: Side): readonly string[] {
    const [before, after] = [this.#bookOf(from), this.#bookOf(upTo)];
    if (!before || !after)
      return ['What was kept of this revision is damaged: it is not the content that was issued.'];
    const notebooks = [openNotebook(before), openNotebook(after)] as const;
    for (const notebook of notebooks) notebook.judgeStated();
    const lines = changeList(compareBooks(...notebooks), { before: before.sheets, after: after.sheets });
    return lines.length === 0 ? ['Nothing.'] : lines;
  }

  /** A side without what the checker says of it, which is no part of what is issued. */
  #bookOf(side: Side): Book | undefined {
    const { book } = this.session.notebook;
    const found = side === 'now' ? book : side === 'file' ? this.file : this.#issued(side);
    return found && { ...found, review: blankBook().review };
  }

  #issued(id: string): Book | undefined {
    const revision = this.session.notebook.book.review.revisions.find((one) => one.id === id);
    return revision && bookOfRevision(revision);
  }
}

/** A line of the list, as far in as its blanks say. */
function drawLine(line: string): TemplateResult {
  const words = line.trimStart();
  const level = (line.length - words.length) / 2;
  return html`<p data-level=${level} .style=${`--level: ${level}`}>${words}</p>`;
}
