import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { menuStyles } from './menu-styles.ts';

/** One thing a menu offers. */
export interface MenuItem<Action> {
  readonly action: Action;
  readonly words: string;
  readonly key?: string;
  /** Whether it is the one chosen of several. */
  readonly checked?: boolean;
}

/** A menu: one native popover, told where to open and what to do with what is chosen. Its items are its own. */
export abstract class PopupMenu<Action> extends LitElement {
  static override styles = menuStyles;
  #back: HTMLElement | undefined;
  #act: ((action: Action) => void) | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    // An 'auto' one closes when the button of the pointer that opened it is let go.
    this.popover = 'manual';
    this.addEventListener('keydown', this.#key);
    this.addEventListener('toggle', this.#toggled);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('pointerdown', this.#pressed, true);
  }

  /** Opens below an element; gives the focus back to `back` when it closes without an action. */
  protected async openBelow(
    below: HTMLElement,
    back: HTMLElement,
    act: (action: Action) => void,
  ): Promise<void> {
    this.#back = back;
    this.#act = act;
    await this.updateComplete;
    this.showPopover();
    const at = below.getBoundingClientRect();
    const own = this.getBoundingClientRect();
    const left = Math.max(8, Math.min(at.right - own.width, innerWidth - own.width - 8));
    const top = at.bottom + own.height + 8 > innerHeight ? Math.max(8, at.top - own.height) : at.bottom;
    this.style.setProperty('left', `${left}px`);
    this.style.setProperty('top', `${top}px`);
    this.#items[0]?.focus();
  }

  get #items(): readonly HTMLElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('[role^=menuitem]')];
  }

  protected item({ action, words, key, checked }: MenuItem<Action>): TemplateResult {
    return html`<button
      type="button"
      role=${checked === undefined ? 'menuitem' : 'menuitemradio'}
      aria-checked=${checked === undefined ? nothing : String(checked)}
      tabindex="-1"
      @click=${() => this.#chosen(action)}
    >
      <span>${words}</span>${key === undefined ? '' : html`<kbd>${key}</kbd>`}
    </button>`;
  }

  #chosen(action: Action): void {
    const act = this.#act;
    // What is done next decides where the focus goes.
    this.#back = undefined;
    this.hidePopover();
    act?.(action);
  }

  readonly #key = (event: KeyboardEvent): void => {
    event.stopPropagation();
    const items = this.#items;
    const at = items.indexOf(this.shadowRoot?.activeElement as HTMLElement);
    const to: Readonly<Record<string, number>> = {
      ArrowDown: (at + 1) % items.length,
      ArrowUp: (at - 1 + items.length) % items.length,
      Home: 0,
      End: items.length - 1,
      ArrowRight: beside(items, at, 1),
      ArrowLeft: beside(items, at, -1),
    };
    const next = to[event.key];
    if (event.key === 'Tab' || event.key === 'Escape') this.hidePopover();
    if (next === undefined) return;
    event.preventDefault();
    items[next]?.focus();
  };

  readonly #toggled = (event: ToggleEvent): void => {
    if (event.newState === 'open') {
      addEventListener('pointerdown', this.#pressed, true);
      return;
    }
    removeEventListener('pointerdown', this.#pressed, true);
    this.#back?.focus({ preventScroll: true });
  };

  readonly #pressed = (event: PointerEvent): void => {
    if (event.composedPath().includes(this)) return;
    // The focus goes where the pointer went.
    this.#back = undefined;
    this.hidePopover();
  };
}

/** The item of the next column on one side that stands nearest to the one at `at`; itself where there is none. */
function beside(items: readonly HTMLElement[], at: number, side: 1 | -1): number {
  const from = items[at]?.getBoundingClientRect();
  if (!from) return at;
  let [best, nearest] = [at, Number.POSITIVE_INFINITY];
  for (const [index, item] of items.entries()) {
    const box = item.getBoundingClientRect();
    const lies = side > 0 ? box.left >= from.right - 1 : box.right <= from.left + 1;
    const distance = Math.abs(box.top - from.top);
    if (lies && distance < nearest) [best, nearest] = [index, distance];
  }
  return best;
}
