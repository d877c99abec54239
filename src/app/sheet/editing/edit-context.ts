/** A text that the browser edits for a page which draws it itself: input methods, dictation and pickers write into it. */
export interface EditContext extends EventTarget {
  readonly text: string;
  readonly updateText: (from: number, to: number, text: string) => void;
  readonly updateSelection: (from: number, to: number) => void;
}

/** An element that such a text can be given to. */
export type EditContextHolder = HTMLElement & { editContext?: EditContext | null };

/** A text of the page's own; undefined where the browser has none such. */
export function createEditContext(): EditContext | undefined {
  const { EditContext: Context } = globalThis as { readonly EditContext?: new () => EditContext };
  return Context && new Context();
}

/** Whether an element is a cell that merely waits for text, whose keys are the page's. */
export function waitsForText(element: EventTarget | undefined): boolean {
  return element instanceof HTMLElement && element.dataset.waits !== undefined;
}
