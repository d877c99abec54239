import { isModalOpen } from '../../style/modal-dialog.ts';
import { scrollUpOrDownTo } from '../in-sight.ts';
import type { Blank } from './focus-elsewhere.ts';

/** What the focus needs of the page. */
export interface FocusHost {
  /** What scrolls. */
  readonly page: Element;
  /** The active cell as drawn; undefined while there is none or it is being edited. */
  readonly activeCell: () => HTMLElement | undefined;
  /** Whether nothing has the focus that could take a text. */
  readonly isLost: () => boolean;
  /** Whether the person is typing in a field that is not on the page. */
  readonly typesElsewhere: () => boolean;
  /** Whether the person is typing in a field of no cell, on the page or elsewhere. */
  readonly typesInNoCell: () => boolean;
  /** On which blank a press is; undefined where it is on something. */
  readonly blankAt: (event: MouseEvent) => Blank | undefined;
  readonly onKey: (event: KeyboardEvent) => void;
}

const isBeside = (blank: Blank): boolean => blank === 'beside' || blank === 'bar of the page';

/** In so many frames the parts around a cell have their heights. */
const FRAMES_TO_SETTLE = 4;

/** Gives the focus to the active cell in time for the next frame, which lays the page out anyway. */
export class RovingFocus {
  readonly #host: FocusHost;
  #frame = 0;
  #isPressed = false;
  #keepsSideways = false;

  constructor(host: FocusHost) {
    this.#host = host;
  }

  connect(): void {
    addEventListener('keydown', this.#earlyKey, { capture: true });
    addEventListener('pointerdown', this.#press, { capture: true });
    addEventListener('mousedown', this.#keep);
    addEventListener('pointerup', this.#released);
    addEventListener('click', this.#takeLost);
    addEventListener('focusout', this.#left);
  }

  disconnect(): void {
    removeEventListener('keydown', this.#earlyKey, { capture: true });
    removeEventListener('pointerdown', this.#press, { capture: true });
    removeEventListener('mousedown', this.#keep);
    removeEventListener('pointerup', this.#released);
    removeEventListener('click', this.#takeLost);
    removeEventListener('focusout', this.#left);
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
  }

  /** `keepsSideways`: where the page is wider than its window, it is not scrolled sideways for it. */
  soon(keepsSideways = false): void {
    this.#keepsSideways = keepsSideways;
    if (this.#frame === 0) this.#frame = requestAnimationFrame(() => this.now());
  }

  now(): void {
    cancelAnimationFrame(this.#frame);
    this.#frame = 0;
    const cell = this.#host.activeCell();
    if (!cell) return;
    const laidOut = cell.checkVisibility({ contentVisibilityAuto: true });
    cell.focus({ preventScroll: true });
    const keepsSideways = this.#keepsSideways;
    this.#keepsSideways = false;
    this.#scrollTo(cell, keepsSideways);
    if (!laidOut) this.#scrollAgain(cell, FRAMES_TO_SETTLE, keepsSideways);
  }

  #scrollTo(cell: HTMLElement, keepsSideways: boolean): void {
    if (keepsSideways) scrollUpOrDownTo(cell, this.#host.page);
    else cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }

  /** Gives the focus to the active cell and leaves the page where it stands. */
  takeBack(): void {
    const cell = this.#host.activeCell();
    if (cell && !cell.matches(':focus')) cell.focus({ preventScroll: true });
  }

  /** Parts that were out of sight only now get their heights, and push the cell away from where it was brought. */
  #scrollAgain(cell: HTMLElement, frames: number, keepsSideways: boolean): void {
    requestAnimationFrame(() => {
      if (cell !== this.#host.activeCell()) return;
      this.#scrollTo(cell, keepsSideways);
      if (frames > 1) this.#scrollAgain(cell, frames - 1, keepsSideways);
    });
  }

  readonly #press = (): void => {
    this.#isPressed = true;
  };

  /**
   * A press on what takes no keys leaves them to the field that is typed in, else to the cell: text that comes before the
   * focus could be given back would find nothing, and a field that loses it is left. Who scrolls goes on where they type.
   */
  readonly #keep = (event: MouseEvent): void => {
    const blank = event.button === 0 && !event.defaultPrevented ? this.#host.blankAt(event) : undefined;
    if (!blank) return;
    event.preventDefault();
    const staysElsewhere =
      blank === 'bar of the page' ? this.#host.typesInNoCell() : this.#host.typesElsewhere();
    if (blank === 'page' || (isBeside(blank) && !staysElsewhere)) this.takeBack();
  };

  /**
   * A press on words, or on a button that has done its last, leaves the focus nowhere, where text without
   * keys would be lost: it comes back to the cell, unless the press has selected words to be copied.
   */
  readonly #released = (): void => {
    this.#isPressed = false;
    this.#comeBack();
  };

  /** So does a dialog that gives the focus back to a field which is gone. While a press is under way words may be selected. */
  readonly #left = ({ relatedTarget }: FocusEvent): void => {
    if (relatedTarget === null && !this.#isPressed) this.#comeBack();
  };

  #comeBack(): void {
    requestAnimationFrame(() => setTimeout(this.#takeLost));
  }

  /** With the click itself, for text may follow it before the next frame. */
  readonly #takeLost = (): void => {
    if (document.hasFocus() && this.#host.isLost() && getSelection()?.isCollapsed !== false) this.takeBack();
  };

  /** A key finds the page before the focus does, and where the focus went with what had it. */
  readonly #earlyKey = (event: KeyboardEvent): void => {
    // A dialog that has the page to itself has its keys too.
    if (isModalOpen()) return;
    const lost = event.target === document.body;
    if (this.#frame !== 0 || lost) this.now();
    if (lost) this.#host.onKey(event);
  };
}
