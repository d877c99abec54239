import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { type Outcome, type Problem, succeed } from '../../diagnostics/index.ts';
import { type Edit, findSheet, joinEdits, type Sheet, setSheetField } from '../../document/index.ts';
import { labelOf, localName, refusalWords } from '../../record/index.ts';
import { renameSheetEdit, sheetKeyRefusal, spelledKey } from '../editing/sheets/rename-sheet.ts';
import { addSheet, keyFor, removeSheetEdit, usersOfSheet } from '../editing/sheets/sheet-edits.ts';
import type { Session } from '../session/session.ts';
import type { BookStore } from '../storage/book-store.ts';
import { dialogStyles } from '../style/dialog-styles.ts';
import { fieldsStyles } from '../style/fields-styles.ts';
import { showModal } from '../style/modal-dialog.ts';

import { type SheetSource, sourceWords } from './bring-source.ts';

/** What is asked about a sheet: what a new one is called, how one is called, whether it goes. */
type Asked = { readonly kind: 'add' | 'change' | 'remove'; readonly sheet: string | undefined };

interface Draft {
  readonly title: string;
  readonly key: string;
  readonly group: string;
}

/** The most lines named before a sheet goes. */
const most = 8;

/** Asks for title, key and group of a sheet, or whether it is to go. */
export class SheetDialog extends LitElement {
  static override properties = {
    session: { attribute: false },
    store: { attribute: false },
    from: { state: true },
    asked: { state: true },
    draft: { state: true },
    refusal: { state: true },
  };
  static override styles = [
    dialogStyles,
    fieldsStyles,
    css`
      dialog {
        width: min(30rem, calc(100vw - 48px));
      }
      dialog:has(quay-bring-sheets) {
        padding-block-end: 0;
      }
      li span {
        color: var(--ink-soft);
      }
    `,
  ];
  declare session: Session;
  declare store: BookStore;
  /** Where a new sheet comes from. */
  declare from: SheetSource;
  declare asked: Asked | undefined;
  declare draft: Draft;
  declare refusal: string;
  /** Whether the key of a new sheet still follows its title. */
  #follows = true;

  constructor() {
    super();
    this.asked = undefined;
    this.from = 'blank';
    this.draft = { title: '', key: '', group: '' };
    this.refusal = '';
  }

  show(asked: Asked): void {
    const { book } = this.session.notebook;
    const sheet = findSheet(book, asked.sheet ?? '');
    this.asked = asked;
    this.from = 'blank';
    this.refusal = '';
    this.#follows = asked.kind === 'add';
    this.draft =
      asked.kind === 'add'
        ? { title: '', key: keyFor(book, ''), group: sheet?.group ?? '' }
        : { title: sheet?.title ?? '', key: sheet?.key ?? '', group: sheet?.group ?? '' };
    void this.updateComplete.then(() => showModal(this.renderRoot.querySelector('dialog')));
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    // What was refused stands there no more once anything is changed.
    if (changed.size > 0 && !changed.has('refusal')) this.refusal = '';
  }

  override render(): TemplateResult {
    const { asked } = this;
    const titles = {
      add: 'A new sheet',
      change: 'Sheet',
      remove: `Remove ${this.draft.title || this.draft.key}?`,
    };
    return html`<dialog
      aria-labelledby="title"
      @close=${() => {
        this.asked = undefined;
      }}
    >
      ${asked ? html`<h2 id="title">${titles[asked.kind]}</h2>` : nothing}
      ${asked?.kind === 'add' ? this.#sources() : nothing}
      ${asked ? this.#content(asked) : nothing}
    </dialog>`;
  }

  #content(asked: Asked): TemplateResult {
    if (asked.kind === 'remove') return this.#removal(asked.sheet ?? '');
    if (asked.kind === 'change' || this.from === 'blank') return this.#fields(asked);
    return html`<quay-bring-sheets
      .session=${this.session}
      .store=${this.store}
      .from=${this.from}
      .behind=${asked.sheet}
      @brought=${this.#close}
    ></quay-bring-sheets>`;
  }

  #sources(): TemplateResult {
    return html`<fieldset class="choices sources">
      <legend>What it begins as</legend>
      ${Object.entries(sourceWords).map(
        ([source, words]) => html`<label>
          <input
            type="radio"
            name="source"
            .checked=${this.from === source}
            @change=${() => {
              this.from = source as SheetSource;
            }}
          />${words}
        </label>`,
      )}
    </fieldset>`;
  }

  #fields(asked: Asked): TemplateResult {
    const groups = new Set(this.session.notebook.book.sheets.flatMap(({ group }) => group ?? []));
    const trouble = this.#keyTrouble(asked);
    const words = trouble ? [trouble.message, ...trouble.hints].join('; ') : this.refusal;
    return html`<form class="fields" @submit=${this.#keep}>
        <label class="field">Title <input name="title" autofocus .value=${this.draft.title} @input=${this.#typed} /></label>
        <label class="field">
          Key, the name that other sheets’ formulas put before a symbol
          <input name="key" .value=${this.draft.key} aria-invalid=${trouble !== undefined} @input=${this.#typed} />
        </label>
        ${words === '' ? nothing : html`<p class="trouble" role="status">${words}</p>`}
        <label class="field">
          Group <input name="group" list="groups" .value=${this.draft.group} @input=${this.#typed} />
        </label>
        <datalist id="groups">${[...groups].map((group) => html`<option value=${group}></option>`)}</datalist>
        <div class="buttons">
          <button type="button" @click=${this.#close}>Cancel</button>
          <button class="main" ?disabled=${trouble !== undefined}>${asked.kind === 'add' ? 'Add' : 'Keep'}</button>
        </div>
      </form>`;
  }

  #removal(key: string): TemplateResult {
    const { notebook } = this.session;
    const users = usersOfSheet(notebook, key);
    const title = (sheet: string) => findSheet(notebook.book, sheet)?.title || sheet;
    return html`${
      users.length === 0
        ? html`<p>No other sheet refers to it.</p>`
        : html`<p>
              ${users.length === 1 ? 'One line of another sheet refers' : `${users.length} lines of other sheets refer`}
              to it and will have no value:
            </p>
            <ul>
              ${users
                .slice(0, most)
                .map(
                  (item) =>
                    html`<li>${labelOf(item)} <span>${localName(item)}, ${title(item.sheet)}</span></li>`,
                )}
            </ul>
            ${users.length > most ? html`<p>and ${users.length - most} more.</p>` : nothing}`
    }
      <p class="quiet">Undo brings it back.</p>
      <div class="buttons">
        <button type="button" autofocus @click=${this.#close}>Cancel</button>
        <button type="button" class="main" @click=${() => this.#apply(succeed(removeSheetEdit(notebook.book, key)))}>Remove</button>
      </div>`;
  }

  #keyTrouble({ kind, sheet }: Asked): Problem | undefined {
    const key = spelledKey(this.draft.key);
    return kind === 'change' && key === sheet ? undefined : sheetKeyRefusal(this.session.notebook.book, key);
  }

  readonly #typed = (event: Event): void => {
    const { name, value } = event.target as HTMLInputElement;
    this.draft = { ...this.draft, [name]: value };
    if (name === 'key') this.#follows = false;
    if (name === 'title' && this.#follows)
      this.draft = { ...this.draft, key: keyFor(this.session.notebook.book, value) };
  };

  readonly #keep = (event: Event): void => {
    event.preventDefault();
    const { asked, draft } = this;
    if (!asked || this.#keyTrouble(asked)) return;
    const { book } = this.session.notebook;
    const key = spelledKey(draft.key);
    const group = draft.group.trim();
    const title = draft.title.trim();
    if (asked.kind === 'add') {
      const change = addSheet(book, asked.sheet, { key, title, ...(group !== '' && { group }) });
      if (this.#apply(succeed(change.edit))) this.session.showSheet(key);
      return;
    }
    const sheet = findSheet(book, asked.sheet ?? '');
    if (sheet) this.#apply(changeOf(book, sheet, { key, title, group }));
  };

  #apply(edit: Outcome<Edit>): boolean {
    const done = edit.ok ? this.session.apply(edit.value) : edit;
    if (done.ok) this.#close();
    else this.refusal = refusalWords(done.problems, this.session.notebook, this.session.sheet).join('. ');
    return done.ok;
  }

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };
}

/** Title and group first, for the key is what they find the sheet by. */
function changeOf(
  book: Session['notebook']['book'],
  sheet: Sheet,
  { key, title, group }: Draft,
): Outcome<Edit> {
  const renamed = renameSheetEdit(book, sheet.key, key);
  if (!renamed.ok) return renamed;
  const edits: Edit[] = [];
  if (title !== sheet.title) edits.push(setSheetField(sheet.key, 'title', title));
  if (group !== (sheet.group ?? ''))
    edits.push(setSheetField(sheet.key, 'group', group === '' ? undefined : group));
  return succeed(joinEdits(`change sheet ${sheet.title || sheet.key}`, [...edits, renamed.value]));
}
