import type { BrowserContext, Page } from 'playwright-core';
import type { Place } from './book.ts';
import { comeToRest } from './rest.ts';

/** A point of the window. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a person does it with: the tab in front, the pointer, the keys. */
export class Hands {
  readonly context: BrowserContext;
  readonly complaints: string[] = [];
  #page: Page;

  constructor(context: BrowserContext, page: Page) {
    this.context = context;
    this.#page = page;
    this.#listen(page);
  }

  get page(): Page {
    return this.#page;
  }

  #listen(page: Page): void {
    page.on('console', (message) => {
      const told = message.type() === 'error' || message.type() === 'warning';
      if (told && !message.text().startsWith('Service Worker registration blocked'))
        this.complaints.push(message.text());
    });
    page.on('pageerror', (error) => this.complaints.push(error.message));
    // A person who is asked whether to leave does leave.
    page.on('dialog', (dialog) => void dialog.accept());
  }

  async press(key: string): Promise<void> {
    await this.#page.keyboard.press(key);
  }

  async clickAt({ x, y }: Point, options: Parameters<Page['mouse']['click']>[2] = {}): Promise<void> {
    await this.#page.mouse.click(x, y, options);
  }

  /** Where the pointer finds a cell; undefined where something else lies over it or it is not there. */
  cell(place: Place): Promise<Point | undefined> {
    return this.#page.evaluate(pointOf, place);
  }

  /** Whether keys go to a cell. */
  isOn({ part, item, field }: Place): Promise<boolean> {
    return this.sees(`quay-sheet [data-part="${part}"][data-item="${item}"] [data-field="${field}"]:focus`);
  }

  /** Whether a cell is marked as selected. */
  isSelected({ part, item, field }: Place): Promise<boolean> {
    return this.sees(
      `quay-sheet [data-part="${part}"][data-item="${item}"] [data-field="${field}"][aria-selected="true"]`,
    );
  }

  /** A point of the paper with nothing on it, looked for from a height on (0 to 1). */
  blank(height: number): Promise<Point | undefined> {
    return this.#page.evaluate(blankPoint, height);
  }

  /** Where the pointer finds a button whose words begin so: that many after the first, or the last one. */
  async button(selector: string, words: string, after: number): Promise<Point | undefined> {
    const found = this.#page.locator(selector).filter({ hasText: new RegExp(`^\\s*${words}`) });
    const count = await found.count();
    if (count === 0) return undefined;
    const one = found.nth(Math.min(after, count - 1));
    if (!(await one.isVisible())) return undefined;
    await one.scrollIntoViewIfNeeded();
    const box = await one.boundingBox();
    const at = box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    // Nobody presses what an open list lies over.
    return at && !(await one.evaluate(isListOver, at)) ? at : undefined;
  }

  /** Whether the cell that is typed in is this one. */
  isEditingAt({ part, item, field }: Place): Promise<boolean> {
    return this.sees(`quay-sheet [data-part="${part}"][data-item="${item}"] [data-field="${field}"].edited`);
  }

  /** A point of an element near its left and lower edge, where what stands beside the page has nothing on it. */
  async edge(selector: string): Promise<Point | undefined> {
    const box = await this.#boxOf(selector);
    return box && { x: box.x + 4, y: box.y + box.height - 4 };
  }

  /**
   * A point on the scroll bar of the page, so far down (0 to 1); undefined where it has none. A driven browser draws no
   * bars: where a page is wider than its frame, lines stand in the room for it, and a press there means them.
   */
  async scrollBar(height: number): Promise<Point | undefined> {
    const box = await this.#boxOf('quay-sheet');
    if (!box) return undefined;
    const point = { x: box.x + box.width - 6, y: box.y + height * box.height };
    const isBar = await this.#page.locator('quay-sheet').evaluate((sheet: HTMLElement, { x, y }) => {
      const scrolls = sheet.offsetWidth - sheet.clientWidth > 6 && sheet.scrollHeight > sheet.clientHeight;
      return scrolls && sheet.shadowRoot?.elementFromPoint(x, y) === sheet;
    }, point);
    return isBar ? point : undefined;
  }

  async #boxOf(selector: string) {
    const found = this.#page.locator(selector).first();
    return (await found.isVisible()) ? ((await found.boundingBox()) ?? undefined) : undefined;
  }

  /** Whether there is something that a selector finds: what a person sees before they go on. */
  async sees(selector: string): Promise<boolean> {
    return (await this.#page.locator(selector).count()) > 0;
  }

  /** Whether a cell is open for typing. */
  isEditing(): Promise<boolean> {
    return this.sees('quay-cell-editor, quay-prose-editor');
  }

  /** Where the first element that a selector finds is met by the pointer. */
  async element(selector: string): Promise<Point | undefined> {
    const found = this.#page.locator(selector).first();
    if ((await found.count()) === 0) return undefined;
    await found.scrollIntoViewIfNeeded({ timeout: 2000 }).catch(() => undefined);
    const box = await found.boundingBox();
    if (!box || box.width === 0) return undefined;
    const point = { x: box.x + Math.min(box.width / 2, 40), y: box.y + box.height / 2 };
    // The list below a field may lie over it: a press there is for the list.
    const isOver = await found.evaluate(isListOver, point);
    return isOver ? undefined : point;
  }

  /** Waits until the page says that all is kept; false if it does not say so in time. */
  async kept(): Promise<boolean> {
    return this.#page
      .getByText(/all kept/)
      .first()
      .waitFor({ timeout: 5000 })
      .then(
        () => true,
        () => false,
      );
  }

  /** Waits until the page shows what was done so far. */
  async rest(): Promise<void> {
    await this.#page.evaluate(comeToRest, 600);
  }

  /** Loads the page again, and waits for its book. */
  async reload(): Promise<void> {
    await this.#page.reload();
    await this.#opened();
  }

  /** Closes the tab, and opens its address in another. */
  async reopen(): Promise<void> {
    const address = this.#page.url();
    const next = await this.context.newPage();
    await this.#page.close({ runBeforeUnload: false });
    this.#page = next;
    this.#listen(next);
    await next.goto(address);
    await this.#opened();
  }

  /** A sheet may have lost all its lines, and a title its words: its heading is always there, or a page about the book. */
  async #opened(): Promise<void> {
    const pages =
      'quay-sheet .sheet-title, quay-overview, quay-about-page, quay-sources-page, quay-checking-page, quay-signing-page';
    await this.#page.locator(pages).first().waitFor({ timeout: 60_000 });
    await this.rest();
  }

  /** Turns to another window, and back. */
  async lookElsewhere(): Promise<void> {
    const other = await this.context.newPage();
    await other.bringToFront();
    await this.#page.evaluate(tellOfWindow, 'blur' as const);
    await this.#page.bringToFront();
    await this.#page.evaluate(tellOfWindow, 'focus' as const);
    await other.close();
  }
}

/**
 * Runs on the page. A driven browser leaves every page the focus, so the page is told as it is when its window loses the
 * keys and has them again: what has the focus keeps it, and hears of it.
 */
function tellOfWindow(type: 'blur' | 'focus'): void {
  if (type === 'blur') document.hasFocus = () => false;
  else Reflect.deleteProperty(document, 'hasFocus');
  let active: Element | null = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  active?.dispatchEvent(new FocusEvent(type, { composed: true }));
  const bubbling = type === 'blur' ? 'focusout' : 'focusin';
  active?.dispatchEvent(new FocusEvent(bubbling, { composed: true, bubbles: true }));
  window.dispatchEvent(new FocusEvent(type));
}

function pointOf({ part, item, field }: Place): Point | undefined {
  const sheet = document
    .querySelector('quay-app')
    ?.shadowRoot?.querySelector('quay-main-view')
    ?.shadowRoot?.querySelector('quay-sheet');
  const root = sheet?.shadowRoot;
  if (!root) return undefined;
  const own = (element: Element): boolean => {
    const at = (name: string) => element.closest<HTMLElement>(`[data-${name}]`)?.dataset[name];
    return at('part') === part && at('item') === item && at('field') === field;
  };
  const cell = [...root.querySelectorAll(`[data-field="${CSS.escape(field)}"]`)].find(own);
  if (!cell) return undefined;
  const frame = sheet.getBoundingClientRect();
  const isWithin = () => {
    const box = cell.getBoundingClientRect();
    return (
      box.top >= frame.top && box.bottom <= frame.bottom && box.left >= frame.left && box.right <= frame.right
    );
  };
  if (!isWithin()) cell.scrollIntoView({ block: 'center', inline: 'nearest' });
  const box = cell.getBoundingClientRect();
  const [x, y] = [box.left + Math.min(box.width / 2, 24), box.top + Math.min(box.height / 2, 14)];
  let at = document.elementFromPoint(x, y);
  for (let turn = 0; turn < 8 && at?.shadowRoot; turn += 1) {
    const inner: Element | null = at.shadowRoot.elementFromPoint(x, y);
    if (!inner || inner === at) break;
    at = inner;
  }
  // What lies in a slot or an editor of the cell counts as the cell.
  for (let up: Node | null = at; up; up = up instanceof ShadowRoot ? up.host : up.parentNode)
    if (up === cell) return at?.closest('button') ? undefined : { x, y };
  return undefined;
}

/** Whether an open list or note lies over an element at a point. */
function isListOver(_element: Element, { x, y }: Point): boolean {
  let at = document.elementFromPoint(x, y);
  for (let turn = 0; turn < 8 && at?.shadowRoot; turn += 1) {
    const inner: Element | null = at.shadowRoot.elementFromPoint(x, y);
    if (!inner || inner === at) break;
    at = inner;
  }
  return at !== null && at.closest('[popover]') !== null;
}

function blankPoint(height: number): Point | undefined {
  const sheet = document
    .querySelector('quay-app')
    ?.shadowRoot?.querySelector('quay-main-view')
    ?.shadowRoot?.querySelector('quay-sheet');
  if (!sheet?.shadowRoot) return undefined;
  const box = sheet.getBoundingClientRect();
  for (const [across, down] of [
    [0.01, 0],
    [0.985, 0],
    [0.03, 0.1],
    [0.96, 0.2],
    [0.5, 0.3],
    [0.5, 0.55],
    [0.97, 0.6],
  ] as const) {
    const [x, y] = [box.left + across * sheet.clientWidth, box.top + ((height + down) % 1) * box.height];
    const inner: Element | null = sheet.shadowRoot.elementFromPoint(x, y);
    const outer = document.elementFromPoint(x, y);
    if (outer?.tagName !== 'QUAY-APP' || !inner) continue;
    if (
      inner === sheet ||
      !inner.closest('[data-part], [role="row"], button, input, label, quay-title-block')
    )
      return { x, y };
  }
  return undefined;
}
