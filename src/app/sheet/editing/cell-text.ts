import { createEditContext, type EditContextHolder } from './edit-context.ts';

/** What becomes of text that comes into the active cell without keys. */
export interface CellTextHost {
  /** Starts editing the active cell with a text in place of what it holds. */
  readonly startEdit: (seed: string) => void;
  /** Takes note of what an input method has composed so far; `done` once it is written out. */
  readonly compose: (text: string, done: boolean) => void;
}

/**
 * Lets input methods, dictation and symbol pickers, which press no keys, write into the cell that has the focus: the
 * cell waits for their text with an edit context; where the browser has none it is an editable element whose text is
 * taken over before it is written. What is being composed stays in the cell, for a move of the focus would end it.
 */
export class CellText {
  readonly #host: CellTextHost;
  readonly #context = createEditContext();
  #cell: EditContextHolder | undefined;
  #isComposing = false;

  constructor(host: CellTextHost) {
    this.#host = host;
    this.#context?.addEventListener('textupdate', this.#update);
    this.#context?.addEventListener('compositionstart', this.#begin);
    this.#context?.addEventListener('compositionend', this.#end);
  }

  /**
   * Follows the focus over the cells below an element. A cell that lost it waits until another element has it: taken
   * away in between, the browser would go on writing into what it was given.
   */
  watch(root: EventTarget): void {
    root.addEventListener('focusin', ({ target }) => {
      if (target !== this.#cell) this.#release();
      if (target instanceof HTMLElement && target !== this.#cell && target.matches('.cell[data-field]'))
        this.#wait(target);
    });
  }

  #wait(cell: EditContextHolder): void {
    this.#cell = cell;
    cell.dataset.waits = '';
    // A finger that chooses a cell does not ask for the keys of the screen.
    cell.inputMode = 'none';
    if (this.#context) cell.editContext = this.#context;
    else {
      cell.contentEditable = 'true';
      cell.addEventListener('beforeinput', this.#take);
      cell.addEventListener('compositionstart', this.#goToField);
    }
    // The browser writes, copies and pastes where the caret is.
    getSelection()?.collapse(cell, 0);
  }

  #release(): void {
    const cell = this.#cell;
    if (!cell) return;
    this.#cell = undefined;
    delete cell.dataset.waits;
    cell.removeAttribute('inputmode');
    if (this.#context) cell.editContext = null;
    else {
      cell.removeAttribute('contenteditable');
      cell.removeEventListener('beforeinput', this.#take);
      cell.removeEventListener('compositionstart', this.#goToField);
    }
  }

  readonly #begin = (): void => {
    this.#isComposing = true;
  };

  readonly #update = (): void => {
    const text = this.#context?.text ?? '';
    if (this.#isComposing) {
      this.#host.compose(text, false);
      return;
    }
    this.#empty();
    if (text !== '') this.#host.startEdit(text);
  };

  readonly #end = (): void => {
    const text = this.#context?.text ?? '';
    this.#isComposing = false;
    this.#empty();
    this.#host.compose(text, true);
  };

  /** Without text the caret does not go back by itself, and the next text would be composed around where it was. */
  #empty(): void {
    const { text = '' } = this.#context ?? {};
    if (text !== '') this.#context?.updateText(0, text.length, '');
    this.#context?.updateSelection(0, 0);
  }

  readonly #take = (event: InputEvent): void => {
    if (event.isComposing) return;
    event.preventDefault();
    const text = event.data ?? event.dataTransfer?.getData('text/plain') ?? '';
    if (text !== '') this.#host.startEdit(text);
  };

  /** What is composed can be written into the field alone. */
  readonly #goToField = (): void => this.#host.startEdit('');
}
