import type { GridMap } from './grid-map.ts';
import { isNear } from './near.ts';
import { isSecondPress, type PressPoint } from './second-press.ts';

/** A press, and the button that it is on or, as the second one of a double click, that the first was on. */
interface Pressed extends PressPoint {
  readonly button: HTMLElement | undefined;
  readonly sheet: string;
}

/**
 * Has a press mean the button it began on, though the page moves away under a hand that rests: what was being typed is
 * entered with the press and makes its line another height. The browser then gives the click to what is around both, and
 * the second click of two to a button that has come to where the first was on something else.
 */
export class PressedButton {
  readonly #page: HTMLElement & { readonly map: GridMap };
  #last: Pressed | undefined;
  #pressed: Pressed | undefined;
  /** The button that has come under the second press of a double click. */
  #strange: HTMLElement | undefined;

  constructor(page: HTMLElement & { readonly map: GridMap }) {
    this.#page = page;
    page.addEventListener('pointerdown', this.#down, { capture: true });
    page.addEventListener('click', this.#click, { capture: true });
    page.addEventListener('wheel', this.#scrolled, { passive: true });
  }

  /** Whether a click on a button is the second of two, of which the first was not on it. */
  isStrange(event: MouseEvent): boolean {
    return event.detail > 1 && this.#strange !== undefined && event.composedPath().includes(this.#strange);
  }

  readonly #down = (event: PointerEvent): void => {
    const [target] = event.composedPath();
    const found = target instanceof Element ? target.closest<HTMLElement>('button, summary') : null;
    const button = found && event.button === 0 ? found : undefined;
    const { clientX, clientY, timeStamp } = event;
    const { sheet } = this.#page.map;
    const last = this.#last;
    const isSecond = last !== undefined && last.sheet === sheet && isSecondPress(event, last);
    this.#last = { clientX, clientY, timeStamp, sheet, button: isSecond ? last.button : button };
    this.#strange = isSecond && button !== last.button ? button : undefined;
    this.#pressed = button && { ...this.#last, button };
  };

  readonly #click = (event: MouseEvent): void => {
    const pressed = this.#pressed;
    this.#pressed = undefined;
    if (this.isStrange(event)) {
      event.stopPropagation();
      event.preventDefault();
      return;
    }
    if (!pressed?.button?.isConnected || event.composedPath().includes(pressed.button)) return;
    // The keys press buttons too; and whoever goes elsewhere with the button down has thought better of it.
    if (event.detail === 0 || !isNear(event, pressed)) return;
    event.stopPropagation();
    pressed.button.click();
  };

  readonly #scrolled = (): void => {
    this.#last = undefined;
    this.#pressed = undefined;
    this.#strange = undefined;
  };
}
