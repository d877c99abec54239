import { css, html, LitElement, nothing } from 'lit';
import { groupedSheets } from './editing/grouped-sheets.ts';
import type { FileHandle } from './keeping/files.ts';
import type { Keeping, Library, LibraryNotice } from './keeping/library.ts';
import type { CellPlace } from './session/place.ts';
import type { Session } from './session/session.ts';
import type { BookSettings } from './settings/book-settings.ts';
import type { DetailsDialog } from './settings/details-dialog.ts';
import type { TableRowsDialog } from './settings/table-rows-dialog.ts';
import type { Asked } from './sheet/asked.ts';
import type { GoToDialog } from './shell/go-to-dialog.ts';
import type { KeysDialog } from './shell/keys-dialog.ts';
import { goToRegion } from './shell/regions.ts';
import { RunningFoot } from './shell/running-foot.ts';
import type { StatusBar } from './shell/status-bar.ts';
import type { BarAction } from './shell/top-bar.ts';

/** The whole app: the start page, or an open book with its bars, sheet and panel. */
export class QuayApp extends LitElement {
  static override properties = {
    library: { attribute: false },
    session: { state: true },
    refusal: { state: true },
    notice: { state: true },
    newVersion: { attribute: false },
    parted: { state: true },
  };
  declare library: Library;
  declare session: Session | undefined;
  declare refusal: string | undefined;
  declare notice: string | undefined;
  /** Changes to the new version that waits, if one does. */
  declare newVersion: (() => void) | undefined;
  /** Whether another tab has changed the book that was changed here too. */
  declare parted: boolean;
  #file: FileHandle | undefined;
  #keeping: Keeping | undefined;
  /** Why nothing is kept in this browser, as long as that is so. */
  #cannotKeep: string | undefined;

  static override styles = css`
    :host {
      display: block;
      height: 100vh;
    }
    .book {
      display: grid;
      grid-template: auto minmax(0, 1fr) auto / 220px minmax(0, 1fr) 300px;
      height: 100%;
      background: var(--desk);
    }
    header,
    footer {
      grid-column: 1 / -1;
      min-width: 0;
    }
    main {
      min-width: 0;
      min-height: 0;
    }
    .box {
      position: fixed;
      max-width: 52ch;
      inset: auto 24px 48px auto;
      padding: 12px 18px;
      border: 1px solid var(--rule-strong);
      background: var(--paper);
      box-shadow: var(--shadow-raised);
    }
    .box button {
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
    @media (max-width: 1280px) {
      .book {
        grid-template-columns: 176px minmax(0, 1fr) 250px;
      }
    }
    @media (max-width: 1100px) {
      .book {
        grid-template-columns: 152px minmax(0, 1fr) 216px;
      }
    }
    @media print {
      :host,
      .book {
        display: block;
        height: auto;
      }
      header,
      footer,
      .box,
      quay-sheet-list,
      quay-side-panel {
        display: none;
      }
    }
  `;

  constructor() {
    super();
    new RunningFoot(this);
    this.parted = false;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.library.onNotice((notice) => this.#hear(notice));
    window.addEventListener('hashchange', this.#route);
    window.addEventListener('keydown', this.#key);
    this.#route();
  }

  override disconnectedCallback(): void {
    window.removeEventListener('hashchange', this.#route);
    window.removeEventListener('keydown', this.#key);
    super.disconnectedCallback();
  }

  override render() {
    return html`${this.#content()}${this.parted ? this.#partedBox() : this.newVersion ? this.#versionBox(this.newVersion) : nothing}`;
  }

  #versionBox(change: () => void) {
    const later = (): void => {
      this.newVersion = undefined;
    };
    return html`<div class="box" role="status">
      A new version of Quaybook is ready.
      <button @click=${change}>Change to it now</button>
      <button @click=${later}>Later</button>
    </div>`;
  }

  #partedBox() {
    const { session } = this;
    if (!session) return nothing;
    const own = async (): Promise<void> => {
      location.hash = `#book/${await this.library.add(session.notebook.book)}`;
    };
    return html`<div class="box" role="alert">
      The other tab is closed, and what was entered there is kept. What you entered here is not.
      <button @click=${own}>Keep mine as a book of its own</button>
      <button @click=${() => void this.#open(session.id)}>Take what is kept</button>
    </div>`;
  }

  #content() {
    if (this.refusal)
      return html`<div class="refusal" role="alert">
        <p>${this.refusal}</p>
        <a href="#">All books</a>
      </div>`;
    const { session } = this;
    if (!session) {
      return location.hash.startsWith('#book/')
        ? nothing
        : html`<quay-start-page .library=${this.library} .notice=${this.notice}></quay-start-page>`;
    }
    return html`<div class="book" @bar-action=${this.#act} @ask=${this.#ask}>
        <header><quay-top-bar .session=${session} .notice=${this.notice}></quay-top-bar></header>
        <quay-sheet-list .session=${session}></quay-sheet-list>
        <main>
          <quay-desk .session=${session}></quay-desk>
        </main>
        <quay-side-panel .session=${session} aria-label="The value in hand" role="complementary"></quay-side-panel>
        <footer><quay-status-bar .session=${session}></quay-status-bar></footer>
      </div>
      <quay-go-to .session=${session}></quay-go-to>
      <quay-details .session=${session}></quay-details>
      <quay-table-rows .session=${session}></quay-table-rows>
      <quay-keys></quay-keys>
      <quay-book-settings .session=${session}></quay-book-settings>`;
  }

  readonly #route = (): void => {
    const id = /^#book\/([^/]+)/.exec(location.hash)?.[1];
    this.refusal = undefined;
    this.notice = this.#cannotKeep;
    if (id === undefined) {
      this.#leave();
      this.session = undefined;
      this.requestUpdate();
    } else if (this.session?.id !== id) void this.#open(id);
  };

  #leave(): void {
    this.#keeping?.close();
    this.#keeping = undefined;
  }

  async #open(id: string): Promise<void> {
    this.parted = false;
    this.#leave();
    try {
      const [opened, { openSession }] = await Promise.all([this.library.open(id), import('./book.ts')]);
      if (!opened.ok) {
        this.refusal = opened.problems[0]?.message ?? 'This book cannot be opened.';
        return;
      }
      this.#file = undefined;
      this.#keeping = this.library.keeper(id);
      this.session = openSession(id, opened.value, this.#keeping.keep, () => Date.now());
      document.title = `${opened.value.title.project || opened.value.title.subject || 'Book'} · Quaybook`;
    } catch (error) {
      this.refusal = error instanceof Error ? error.message : String(error);
    }
  }

  #hear(notice: LibraryNotice): void {
    if (notice.kind === 'cannot keep') this.notice = this.#cannotKeep = `not kept: ${notice.reason}`;
    else if (notice.id !== this.session?.id) return;
    else if (notice.kind === 'cannot fold') this.notice = `kept edit by edit only: ${notice.reason}`;
    else if (notice.kind === 'open elsewhere')
      this.notice = 'open in another tab, which keeps it; here nothing is kept';
    else if (this.session.canUndo || this.session.canRedo) this.parted = true;
    else void this.#open(notice.id);
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
        this.#print();
        break;
      case 'go to':
        this.#element<GoToDialog>('quay-go-to')?.show();
        break;
      case 'keys':
        this.#element<KeysDialog>('quay-keys')?.show();
        break;
    }
  };

  readonly #ask = ({ detail: { about, place } }: CustomEvent<Asked>): void => {
    if (about === 'details') this.#element<DetailsDialog>('quay-details')?.show(place);
    else if (about === 'rows') this.#element<TableRowsDialog>('quay-table-rows')?.show(place);
    else if (this.session) void this.#saveTable(this.session, place);
  };

  async #saveTable({ notebook }: Session, place: CellPlace): Promise<void> {
    const { saveTable } = await import('./book.ts');
    saveTable(notebook, place);
  }

  /** Lets the sheet lay itself out for paper before the browser takes it: a script's print gives it no frame to. */
  #print(): void {
    window.dispatchEvent(new Event('beforeprint'));
    requestAnimationFrame(() =>
      setTimeout(() => {
        window.print();
        // A browser that prints nothing tells of no end either.
        window.dispatchEvent(new Event('afterprint'));
      }),
    );
  }

  #element<T extends Element>(name: string): T | null {
    return this.renderRoot.querySelector<T>(name);
  }

  async #save(): Promise<void> {
    if (!this.session) return;
    try {
      const { saveBookFile } = await import('./book.ts');
      this.#file = await saveBookFile(this.session.notebook.book, this.#file);
    } catch (error) {
      this.notice = `not saved: ${error instanceof Error ? error.message : String(error)}`;
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
            p: () => this.#print(),
            z: typing ? undefined : () => (event.shiftKey ? session.redo() : session.undo()),
            y: typing ? undefined : () => session.redo(),
            pageup: () => this.#turn(-1),
            pagedown: () => this.#turn(1),
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
                f8: () => this.#element<StatusBar>('quay-status-bar')?.goToNext(event.shiftKey ? -1 : 1),
                f1: () => this.#element<KeysDialog>('quay-keys')?.show(),
                '?': typing ? undefined : () => this.#element<KeysDialog>('quay-keys')?.show(),
              } as Record<string, (() => void) | undefined>
            )[key];
    if (!does) return;
    event.preventDefault();
    does();
  };

  #turn(step: number): void {
    const { session } = this;
    if (!session) return;
    const sheets = [...groupedSheets(session.notebook.book).values()].flat();
    // The overview stands in front of the first sheet.
    const at = session.overview ? -1 : sheets.findIndex((sheet) => sheet.key === session.sheet);
    const next = sheets[at + step];
    if (next) session.showSheet(next.key);
    else if (at + step === -1) session.showOverview('checks');
  }
}

/** Whether a key is pressed in a dialog, which has the book to itself. */
function isInDialog(event: KeyboardEvent): boolean {
  return event.composedPath().some((one) => one instanceof HTMLDialogElement);
}

/** Whether a key goes into a text that is being typed. */
function isTyping(event: KeyboardEvent): boolean {
  const [target] = event.composedPath();
  return (
    target instanceof HTMLInputElement ||
    target instanceof HTMLTextAreaElement ||
    (target instanceof HTMLElement && target.isContentEditable)
  );
}
