import { isNear } from './near.ts';

/** A button, and where a press on it began. */
interface Pressed extends Pick<PointerEvent, 'clientX' | 'clientY'> {
  readonly button: HTMLElement;
}

/**
 * Has a press mean the button it began on, though the page moves away under a hand that rests: what was being typed is
 * entered with the press and makes its line another height. The browser then gives the click to what is around both.
 */
export class PressedButton {
  #pressed: Pressed | undefined;

  constructor(page: HTMLElement) {
    page.addEventListener('pointerdown', this.#down, { capture: true });
    page.addEventListener('click', this.#click, { capture: true });
    page.addEventListener('wheel', this.#scrolled, { passive: true });
  }

  readonly #down = (event: PointerEvent): void => {
    const [target] = event.composedPath();
    const button = target instanceof Element ? target.closest<HTMLElement>('button, summary') : null;
    const { clientX, clientY } = event;
    this.#pressed = button && event.button === 0 ? { button, clientX, clientY } : undefined;
  };

  readonly #click = (event: MouseEvent): void => {
    const pressed = this.#pressed;
    this.#pressed = undefined;
    if (!pressed?.button.isConnected || event.composedPath().includes(pressed.button)) return;
    // The keys press buttons too; and whoever goes elsewhere with the button down has thought better of it.
    if (event.detail === 0 || !isNear(event, pressed)) return;
    event.stopPropagation();
    pressed.button.click();
  };

  readonly #scrolled = (): void => {
    this.#pressed = undefined;
  };
}
