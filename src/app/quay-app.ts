import { css, html, LitElement, nothing } from 'lit';
import type { BookSettings } from './dialogs/book-settings.ts';
import type { DetailsDialog } from './dialogs/details-dialog.ts';
import type { GoToDialog } from './dialogs/go-to-dialog.ts';
import type { KeysDialog } from './dialogs/keys-dialog.ts';
import type { LinkDialog } from './dialogs/link-dialog.ts';
import type { TableRowsDialog } from './dialogs/rows/table-rows-dialog.ts';
import type { SidePanel } from './panel/side-panel.ts';
import type { PrintDialog } from './print/quay-print-dialog.ts';
import type { Session } from './session/session.ts';
import type { AppRequest } from './sheet/app-request.ts';
import { waitsForText } from './sheet/editing/edit-context.ts';
import { bookLayout } from './shell/book-layout.ts';
import { focusRegion, goToRegion } from './shell/regions.ts';
import type { SaveAction } from './shell/save-alert.ts';
import { type Side, Sides } from './shell/sides.ts';
import type { StatusBar } from './shell/status-bar.ts';
import type { BarAction, BarMessage } from './shell/top-bar.ts';
import type { BookFiles } from './storage/book-file.ts';
import type { BookStore, OpenBook } from './storage/book-store.ts';
import { browserDrafts } from './storage/browser-drafts.ts';
import { tabPageViews } from './storage/page-views.ts';
import { reasonOf } from './storage/storage-error.ts';
import type { StoreNotice } from './storage/store-notice.ts';
import { isModalOpen } from './style/modal-dialog.ts';
import { type CellPlace, methodFieldOf } from './view-model/place.ts';

/** Why a book is not shown; `raw` is its id where what is stored of it can be saved as it is. */
interface Refusal {
  readonly text: string;
  readonly raw: string | undefined;
}

/** The whole app: the start page, or an open book with its bars, sheet and panel. */
export class QuayApp extends LitElement {
  static override properties = {
    store: { attribute: false },
    session: { state: true },
    refusal: { state: true },
    notice: { state: true },
    message: { state: true },
    newVersion: { attribute: false },
    changedVersion: { attribute: false },
    told: { state: true },
  };
  declare store: BookStore;
  declare session: Session | undefined;
  declare refusal: Refusal | undefined;
  /** What the person should know of the storage of this browser, as long as it is so. */
  declare notice: string | undefined;
  /** What became of the last saving of a file. */
  declare message: BarMessage | undefined;
  /** Changes to the new version that waits, if one does. */
  declare newVersion: (() => void) | undefined;
  /** Whether a new version was changed to in another tab, or has taken the storage. */
  declare changedVersion: boolean;
  /** What became of a value that was being tried in the book that was left. */
  declare told: string | undefined;
  #open: OpenBook | undefined;
  /** Counts openings: one that ends after the next began is given up. */
  #opening = 0;
  #files: BookFiles | undefined;
  readonly #drafts = browserDrafts();
  readonly #sides = new Sides(this);

  static override styles = [
    bookLayout,
    css`
    :host {
      display: block;
      height: 100dvh;
    }
    .boxes {
      display: grid;
      position: fixed;
      gap: 12px;
      justify-items: end;
      inset: auto 24px 48px auto;
    }
    .box {
      max-width: min(52ch, calc(100vw - 48px));
      box-sizing: border-box;
      padding: 12px 18px;
      border: 1px solid var(--rule-strong);
      background: var(--paper);
      box-shadow: var(--shadow-raised);
    }
    .box button,
    .refusal button {
      min-height: 24px;
      margin-inline-start: 12px;
      border: 0;
      background: none;
      color: var(--accent);
      font: inherit;
      cursor: pointer;
    }
    .refusal {
      max-width: 40rem;
      margin: 15vh auto;
      padding: 24px 32px;
      background: var(--paper);
      box-shadow: var(--shadow);
    }
    @media print {
      :host {
        height: auto;
      }
      .boxes {
        display: none;
      }
    }
  `,
  ];

  constructor() {
    super();
    this.changedVersion = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.store.onNotice((notice) => this.#hear(notice));
    window.addEventListener('hashchange', this.#route);
    window.addEventListener('beforeunload', this.#onBeforeUnload);
    window.addEventListener('keydown', this.#key);
    this.#route();
  }

  override disconnectedCallback(): void {
    window.removeEventListener('hashchange', this.#route);
    window.removeEventListener('beforeunload', this.#onBeforeUnload);
    window.removeEventListener('keydown', this.#key);
    super.disconnectedCallback();
  }

  override render() {
    return html`${this.#content()}
      <div class="boxes">
        ${
          this.session && this.#open
            ? html`<quay-save-alert
                .session=${this.session}
                .open=${this.#open}
                @save-action=${this.#onSaveAction}
              ></quay-save-alert>`
            : nothing
        }
        ${this.told ? this.#toldBox(this.told) : nothing} ${this.#versionBox()}
      </div>`;
  }

  #versionBox() {
    const later = (): void => {
      this.newVersion = undefined;
    };
    if (this.changedVersion)
      return html`<div class="box" role="status">
        Another tab has changed to a new version of Quaybook.
        <button @click=${() => location.reload()}>Load it here too</button>
      </div>`;
    if (!this.newVersion) return nothing;
    return html`<div class="box" role="status">
      A new version of Quaybook is ready.
      <button @click=${this.newVersion}>Change to it now</button>
      <button @click=${later}>Later</button>
    </div>`;
  }

  #toldBox(words: string) {
    const close = (): void => {
      this.told = undefined;
    };
    return html`<div class="box" role="status">${words} <button @click=${close}>Close</button></div>`;
  }

  #content() {
    if (this.refusal) {
      const { text, raw } = this.refusal;
      return html`<div class="refusal" role="alert">
        <p>${text}</p>
        <a href="#">All books</a>
        ${raw === undefined ? nothing : html`<button @click=${() => this.#downloadRaw(raw)}>Save what is stored as a file</button>`}
      </div>`;
    }
    const { session } = this;
    if (!session) {
      if (!location.hash.startsWith('#book/'))
        return html`<quay-start-page .store=${this.store} .notice=${this.notice}></quay-start-page>`;
      return this.notice ? html`<div class="refusal" role="status"><p>${this.notice}</p></div>` : nothing;
    }
    return html`<div class="book" @bar-action=${this.#act} @ask=${this.#ask}>
        <header>
          <quay-top-bar
            .session=${session}
            .notice=${this.notice}
            .message=${this.message}
            .shown=${{ list: this.#sides.isShown('list'), panel: this.#sides.isShown('panel') }}
          ></quay-top-bar>
          <quay-example-note .session=${session}></quay-example-note>
        </header>
        <quay-sheet-list
          class=${this.#sideClass('list')}
          ?hidden=${!this.#sides.isShown('list')}
          tabindex="-1"
          .session=${session}
          .store=${this.store}
          @page-chosen=${this.#onPageChosen}
        ></quay-sheet-list>
        <main>
          <quay-main-view .session=${session}></quay-main-view>
        </main>
        <quay-side-panel
          class=${this.#sideClass('panel')}
          ?hidden=${!this.#sides.isShown('panel')}
          tabindex="-1"
          .session=${session}
          @page-chosen=${this.#onPageChosen}
          aria-label="The value in hand"
          role="complementary"
        ></quay-side-panel>
        <footer><quay-status-bar .session=${session}></quay-status-bar></footer>
      </div>
      <quay-go-to .session=${session}></quay-go-to>
      <quay-details .session=${session}></quay-details>
      <quay-link .session=${session}></quay-link>
      <quay-table-rows .session=${session}></quay-table-rows>
      <quay-keys></quay-keys>
      <quay-book-settings .session=${session}></quay-book-settings>
      <quay-print .session=${session}></quay-print>`;
  }

  #sideClass(side: Side): string {
    return `side ${side}${this.#sides.isOver(side) ? ' over' : ''}`;
  }

  #toggleSide(side: Side): void {
    this.#sides.toggle(side);
    if (this.#sides.isShown(side)) return;
    void this.updateComplete.then(() => this.#backToPage());
  }

  #foldByKey(): void {
    this.#sides.foldOver();
    void this.updateComplete.then(() => focusRegion(this.renderRoot, 'quay-main-view'));
  }

  /** Gives the page the focus that went with a folded side. */
  #backToPage(): void {
    if (
      document.activeElement === document.body ||
      this.renderRoot.querySelector('.side[hidden]:focus-within')
    )
      focusRegion(this.renderRoot, 'quay-main-view');
  }

  /** A side that lies over the sheet makes way for the page that was chosen, which takes the focus once it is drawn. */
  readonly #onPageChosen = (): void => {
    if (this.#sides.foldOver())
      requestAnimationFrame(() => setTimeout(() => focusRegion(this.renderRoot, 'quay-main-view')));
  };

  readonly #route = (): void => {
    const id = /^#book\/([^/]+)/.exec(location.hash)?.[1];
    this.refusal = undefined;
    this.message = undefined;
    if (this.session?.id !== id) {
      this.session?.endEdit('close');
      this.told = this.#element<SidePanel>('quay-side-panel')?.farewell();
    }
    if (id === undefined) {
      this.#opening += 1;
      this.#leave();
      this.session = undefined;
      this.requestUpdate();
    } else if (this.session?.id !== id) void this.#openBook(id);
  };

  /** Asks before the page goes where something would go with it. */
  readonly #onBeforeUnload = (event: BeforeUnloadEvent): void => {
    if (this.store.hasUnsaved() || this.session?.handNoted === false) event.preventDefault();
  };

  #leave(): void {
    if (this.#open) tabPageViews.write(this.#open.id, undefined);
    this.#open?.close();
    this.#open = undefined;
  }

  async #openBook(id: string): Promise<void> {
    this.#opening += 1;
    const turn = this.#opening;
    this.#leave();
    try {
      const [opened, { openSession }] = await Promise.all([this.store.open(id), import('./book.ts')]);
      if (turn !== this.#opening) {
        if (opened.ok) opened.value.close();
        return;
      }
      if (!opened.ok) {
        const [first] = opened.problems;
        const stored = first?.code !== 'book-not-kept';
        this.refusal = {
          text: first?.message ?? 'This book cannot be opened.',
          raw: stored ? id : undefined,
        };
        return;
      }
      this.#show(opened.value, openSession);
    } catch (error) {
      if (turn !== this.#opening) return;
      this.refusal = {
        text: `This book cannot be opened from the storage of this browser: ${reasonOf(error)}.`,
        raw: undefined,
      };
    }
  }

  #show(opened: OpenBook, openSession: typeof import('./book.ts').openSession): void {
    const { id, book, autosave } = opened;
    this.#open = opened;
    const session = openSession(id, book, autosave, this.#drafts, tabPageViews);
    this.session = session;
    // What was being typed in the panel when the page went away is there again, and the panel with it.
    if (session.hand && methodFieldOf(session.hand.place)) this.#sides.show('panel');
    document.title = `${book.title.project || book.title.subject || 'Book'} · Quaybook`;
  }

  /** Shows what is stored in place of the open book; where that cannot be opened, the book stays and it is said. */
  async #takeStored(opened: OpenBook): Promise<void> {
    const { openSession } = await import('./book.ts');
    const taken = await opened.takeStored();
    if (this.#open !== opened) {
      if (taken.ok) taken.value.close();
    } else if (taken.ok) this.#show(taken.value, openSession);
    else this.#say(`what is kept cannot be opened: ${taken.problems[0]?.message}`, 'bad');
  }

  #hear(notice: StoreNotice): void {
    switch (notice.kind) {
      case 'cannot keep':
      case 'waiting':
        this.notice = `not kept: ${notice.reason}`;
        break;
      case 'ready':
        this.notice = undefined;
        break;
      case 'gave way':
        this.changedVersion = true;
        break;
      case 'changed elsewhere':
        if (this.#open?.id === notice.id) this.#attempt(this.#takeStored(this.#open));
        break;
      case 'cannot compact':
        if (notice.id === this.session?.id) this.#say(`kept edit by edit only: ${notice.reason}`, 'bad');
        break;
      case 'list':
        break;
    }
  }

  /** Says it in the bar where something that was begun fails. */
  #attempt(work: Promise<void>): void {
    work.catch((error: unknown) => this.#say(`that did not work: ${reasonOf(error)}`, 'bad'));
  }

  /** Says something in the bar until the book changes. */
  #say(text: string, tone: BarMessage['tone']): void {
    this.message = { text, tone, book: this.session?.notebook.book };
  }

  readonly #onSaveAction = ({ detail }: CustomEvent<SaveAction>): void => {
    const { session } = this;
    const opened = this.#open;
    if (!session || !opened) return;
    const does: Readonly<Record<SaveAction, () => Promise<void>>> = {
      file: () => this.#save(),
      'keep anew': () => opened.autosave.saveAnew(),
      'keep as own': async () => {
        const { book } = session.notebook;
        const id = await this.store.add(book);
        opened.autosave.markSafe(book);
        location.hash = `#book/${id}`;
      },
      'take kept': () => this.#takeStored(opened),
      raw: () => this.#downloadRaw(session.id),
    };
    this.#attempt(does[detail]());
  };

  async #downloadRaw(id: string): Promise<void> {
    try {
      const [text, { download }] = await Promise.all([this.store.rawText(id), import('./book.ts')]);
      download(`stored-${id}.json`, text);
    } catch (error) {
      this.#say(`not saved: ${reasonOf(error)}`, 'bad');
    }
  }

  readonly #act = (event: CustomEvent<BarAction>): void => {
    switch (event.detail) {
      case 'start':
        location.hash = '';
        break;
      case 'book':
        this.#element<BookSettings>('quay-book-settings')?.show();
        break;
      case 'save':
        void this.#save();
        break;
      case 'print':
        this.#element<PrintDialog>('quay-print')?.show();
        break;
      case 'record':
        if (this.session) this.#attempt(this.#saveRecord(this.session));
        break;
      case 'go to':
        this.#element<GoToDialog>('quay-go-to')?.show();
        break;
      case 'keys':
        this.#element<KeysDialog>('quay-keys')?.show();
        break;
      case 'list':
      case 'panel':
        this.#toggleSide(event.detail);
        break;
    }
  };

  readonly #ask = ({ detail: { about, place, pasted } }: CustomEvent<AppRequest>): void => {
    if (about === 'details') this.#element<DetailsDialog>('quay-details')?.show(place);
    else if (about === 'link') this.#element<LinkDialog>('quay-link')?.show(place);
    else if (about === 'methods') this.#goToMethods();
    else if (about === 'rows') this.#element<TableRowsDialog>('quay-table-rows')?.show(place, pasted);
    else if (this.session) this.#attempt(this.#saveTable(this.session, place));
  };

  #goToMethods(): void {
    this.#sides.show('panel');
    void this.updateComplete.then(() => this.#element<SidePanel>('quay-side-panel')?.goToMethods());
  }

  async #saveTable({ notebook }: Session, place: CellPlace): Promise<void> {
    const { saveTable } = await import('./book.ts');
    saveTable(notebook, place);
  }

  async #saveRecord({ notebook }: Session): Promise<void> {
    const { saveRecord } = await import('./book.ts');
    this.#say(`the record is saved as ${saveRecord(notebook.book)}`, 'soft');
  }

  #element<T extends Element>(name: string): T | null {
    return this.renderRoot.querySelector<T>(name);
  }

  async #save(): Promise<void> {
    const { session } = this;
    const opened = this.#open;
    if (!session || !opened) return;
    const { book } = session.notebook;
    // Another book may be open when the file is written.
    const which = (): string =>
      this.session === session ? '' : `“${book.title.project || book.title.subject || 'Untitled book'}” `;
    try {
      const { createBookFiles } = await import('./book.ts');
      this.#files ??= createBookFiles();
      const name = await this.#files.save(session.id, book);
      if (name === undefined) return;
      opened.autosave.markSafe(book);
      this.#say(`${which()}saved to ${name}`, 'soft');
    } catch (error) {
      this.#say(`${which()}not saved: ${reasonOf(error)}`, 'bad');
    }
  }

  readonly #key = (event: KeyboardEvent): void => {
    const { session } = this;
    if (!session || event.defaultPrevented) return;
    const typing = isTyping(event);
    const control = event.ctrlKey || event.metaKey;
    const key = event.key.toLowerCase();
    const does: (() => void) | undefined = control
      ? (
          {
            g: () => this.#element<GoToDialog>('quay-go-to')?.show(),
            s: () => void this.#save(),
            p: () => this.#element<PrintDialog>('quay-print')?.show(),
            z: typing || isModalOpen() ? undefined : () => (event.shiftKey ? session.redo() : session.undo()),
            y: typing || isModalOpen() ? undefined : () => session.redo(),
            pageup: isModalOpen() ? undefined : () => this.session?.turnSheet(-1),
            pagedown: isModalOpen() ? undefined : () => this.session?.turnSheet(1),
          } as Record<string, (() => void) | undefined>
        )[key]
      : isInDialog(event)
        ? undefined
        : event.altKey
          ? key === 'arrowleft' && !typing
            ? () => void session.goBack()
            : undefined
          : (
              {
                f6: () => goToRegion(this.renderRoot, event.shiftKey ? -1 : 1),
                f9: () => this.#toggleSide(event.shiftKey ? 'list' : 'panel'),
                escape: this.#sides.isAnyOver ? () => this.#foldByKey() : undefined,
                f8: () => this.#element<StatusBar>('quay-status-bar')?.goToNext(event.shiftKey ? -1 : 1),
                f1: () => this.#element<KeysDialog>('quay-keys')?.show(),
                '?': typing ? undefined : () => this.#element<KeysDialog>('quay-keys')?.show(),
              } as Record<string, (() => void) | undefined>
            )[key];
    if (!does) return;
    event.preventDefault();
    does();
  };
}

/** Whether a key is pressed in a dialog, which has the book to itself. */
function isInDialog(event: KeyboardEvent): boolean {
  return event.composedPath().some((one) => one instanceof HTMLDialogElement);
}

/** Whether a key goes into a text that is being typed. */
function isTyping(event: KeyboardEvent): boolean {
  const [target] = event.composedPath();
  return (
    (target instanceof HTMLInputElement && !/^(?:radio|checkbox|button|file)$/.test(target.type)) ||
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLElement && target.isContentEditable && !waitsForText(target))
  );
}
