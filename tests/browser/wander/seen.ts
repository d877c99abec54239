import { type Book, type Place, readBook } from './book.ts';
import type { Hands } from './hands.ts';

/** An open editor as a person sees it. */
export interface Editor {
  readonly place: Place;
  readonly text: string;
  /** The unit that stands beside it. */
  readonly unit: string;
  /** What it says that it takes: a value, a formula, a reason. */
  readonly as: string;
}

/** A cell in sight. */
export interface Cell {
  readonly place: Place;
  readonly selected: boolean;
  /** The unit that stands beside it. */
  readonly unit: string;
}

/** What a person sees, and the book that is behind it. */
export interface Seen {
  readonly book: Book;
  readonly sheet: string;
  readonly overview: boolean;
  readonly units: string;
  /** The chosen cell. */
  readonly place: Place | undefined;
  readonly editor: Editor | undefined;
  readonly cells: readonly Cell[];
  /** The cells in sight or not that are marked as selected. */
  readonly selected: readonly Place[];
  /** Sentences that stand on the page beside the book: refusals, notes, messages, dialogs. */
  readonly said: string;
  readonly dialog: boolean;
  readonly menu: boolean;
  readonly kept: string;
  /** Whether keys go to the page: to a cell of it, or to nothing else. */
  readonly onPage: boolean;
  readonly complaints: readonly string[];
}

interface Raw extends Omit<Seen, 'book' | 'complaints'> {
  readonly text: string | undefined;
}

/** Reads a page again and again; the book only when it is another. */
export class Eyes {
  readonly #hands: Hands;
  #book: Book | undefined;
  #told = 0;

  constructor(hands: Hands) {
    this.#hands = hands;
  }

  /** What is seen when the page has come to rest. */
  async look(): Promise<Seen> {
    const { page, complaints: all } = this.#hands;
    await this.#hands.rest();
    const { text, ...rest } = await page.evaluate(read, this.#book === undefined);
    if (text !== undefined) this.#book = readBook(text);
    if (!this.#book) throw new Error('no book is open');
    const complaints = all.slice(this.#told);
    this.#told = all.length;
    return { ...rest, book: this.#book, complaints };
  }
}

/** Runs on the page. The session is only read. */
function read(first: boolean): Raw {
  interface Session {
    readonly notebook: { readonly book: object };
    readonly place: Place | undefined;
    readonly sheet: string;
    readonly overview: unknown;
    readonly units: string;
  }
  const app = document.querySelector<Element & { readonly session?: Session }>('quay-app');
  const session = app?.session;
  if (!app?.shadowRoot || !session) throw new Error('no book is open');
  const store = globalThis as unknown as { wanderBook?: object };
  const { book } = session.notebook;
  const text = first || store.wanderBook !== book ? JSON.stringify(book) : undefined;
  store.wanderBook = book;
  const roots: ShadowRoot[] = [app.shadowRoot];
  for (const root of roots)
    for (const one of root.querySelectorAll('*')) if (one.shadowRoot) roots.push(one.shadowRoot);
  const all = (selector: string): Element[] => roots.flatMap((root) => [...root.querySelectorAll(selector)]);
  const words = (element: Element | undefined | null): string =>
    (element?.textContent ?? '').replace(/\s+/g, ' ').trim();
  const isShown = (element: Element): boolean => element.checkVisibility({ visibilityProperty: true });
  const sheetElement = all('quay-sheet')[0];
  const page = sheetElement?.shadowRoot ?? undefined;
  const sheet = session.sheet;
  const placeOf = (cell: Element): Place | undefined => {
    const part = cell.closest<HTMLElement>('[data-part]')?.dataset.part;
    const item = cell.closest<HTMLElement>('[data-item]')?.dataset.item;
    const field = cell.closest<HTMLElement>('[data-field]')?.dataset.field;
    return part === undefined || item === undefined || field === undefined
      ? undefined
      : { sheet, part, item, field };
  };
  const unitBeside = ({ part, item, field }: Place): string => {
    const name = CSS.escape(part);
    // A line may have an id that looks like the number of a row.
    const table = page?.querySelector(`quay-table[data-part="${name}"]`);
    if (table && /^r\d+$|^head$/.test(item))
      return words(table.querySelector(`[data-item="head"] [data-field="${CSS.escape(field)}"] .unit`));
    return words(
      page?.querySelector(`quay-line[data-part="${name}"][data-item="${CSS.escape(item)}"] > .unit`),
    );
  };
  const fieldOf = (editor: Element): Element | undefined => {
    const within = editor.shadowRoot ?? editor;
    const own = within.querySelector('input, textarea, .cm-content, .field');
    if (own) return own;
    const inner = [...within.children].find(({ shadowRoot }) => shadowRoot);
    return inner && fieldOf(inner);
  };
  const textOf = (editor: Element): string => {
    const field = fieldOf(editor);
    if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) return field.value;
    if (field?.matches('.cm-content'))
      return [...field.querySelectorAll('.cm-line')].map((line) => line.textContent ?? '').join('\n');
    return words(field);
  };
  let editor: Editor | undefined;
  const found = page?.querySelector('quay-cell-editor, quay-prose-editor');
  if (found) {
    const place = placeOf(found) ?? session.place;
    const [as = ''] = (fieldOf(found)?.getAttribute('aria-label') ?? '').split(' ');
    if (place) editor = { place, text: textOf(found), unit: unitBeside(place), as };
  }
  let active: Element | null = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  if (active instanceof HTMLInputElement && active.closest('label.field')) {
    const field = words(active.closest('label')?.querySelector('.name')).toLowerCase();
    editor ??= {
      place: { sheet: '', part: 'title block', item: '', field },
      text: active.value,
      unit: '',
      as: '',
    };
  }
  const frame = sheetElement?.getBoundingClientRect();
  const cells: Cell[] = [];
  const selected: Place[] = [];
  for (const cell of page?.querySelectorAll('[data-field]') ?? []) {
    const place = placeOf(cell);
    if (!place || !frame) continue;
    const chosen = cell.getAttribute('aria-selected') === 'true';
    if (chosen) selected.push(place);
    const box = cell.getBoundingClientRect();
    const within =
      box.top >= frame.top &&
      box.bottom <= frame.bottom &&
      box.left >= frame.left &&
      box.right <= frame.right;
    if (within && box.width > 4) cells.push({ place, selected: chosen, unit: unitBeside(place) });
  }
  const sayers =
    '.refusal:popover-open, .below:popover-open, dialog[open], .box, quay-change-notice, [role="alert"]';
  const notes = all(sayers).filter(isShown);
  const kept =
    all('[role="status"]')
      .map(words)
      .find((one) => /kept|keeping/.test(one)) ?? '';
  const own =
    active === document.body || active === null || page?.activeElement === active || active === sheetElement;
  return {
    text,
    sheet,
    overview: session.overview !== undefined,
    units: session.units,
    place: session.place,
    editor,
    cells,
    selected,
    said: notes
      .map((note) => words(note) + (note.shadowRoot ? (note.shadowRoot.textContent ?? '') : ''))
      .join(' | '),
    dialog: all('dialog[open]').length > 0,
    menu: all('[role="menu"]').some((menu) => {
      const host = menu.getRootNode();
      return host instanceof ShadowRoot && host.host.matches(':popover-open');
    }),
    kept,
    onPage: own,
  };
}
