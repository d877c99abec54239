const FOCUSABLE =
  'input:not([disabled]), textarea, select, button:not([disabled]), a[href], summary, [tabindex]:not([tabindex="-1"])';

/** Dialogs that were shown over the page of this window, the topmost last. */
const shown = new Set<HTMLDialogElement>();

/** Whether a dialog is open that has the page to itself. */
export function isModalOpen(): boolean {
  return topmost() !== undefined;
}

/** One may go without being closed, as with the book it belongs to. */
function topmost(): HTMLDialogElement | undefined {
  for (const dialog of shown) if (!dialog.open || !dialog.isConnected) shown.delete(dialog);
  return [...shown].at(-1);
}

/**
 * Shows a dialog that has the page to itself: as long as it stands every key is its own. One that is pressed while nothing
 * has the focus, as behind its last button, brings the focus back to it and does nothing else; Escape closes it.
 */
export function showModal(dialog: HTMLDialogElement | null): void {
  if (!dialog || dialog.open) return;
  dialog.showModal();
  shown.add(dialog);
  const isLost = (): boolean => document.activeElement === document.body;
  const takeBack = (fromEnd: boolean): void => {
    const fields = [...dialog.querySelectorAll<HTMLElement>(FOCUSABLE)].filter((one) =>
      one.checkVisibility(),
    );
    (fields.at(fromEnd ? -1 : 0) ?? dialog).focus();
  };
  const onKeydown = (event: KeyboardEvent): void => {
    const top = topmost();
    if (!shown.has(dialog)) removeEventListener('keydown', onKeydown, { capture: true });
    if (top !== dialog) return;
    if (event.composedPath().includes(dialog)) {
      // Behind the last field the focus would be on nothing; where the browser's own bar takes it, it has left the page.
      if (event.key === 'Tab')
        setTimeout(() => {
          if (topmost() === dialog && document.hasFocus() && isLost()) takeBack(event.shiftKey);
        });
      return;
    }
    if (!isLost()) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (event.key === 'Escape') dialog.close();
    else takeBack(event.shiftKey);
  };
  addEventListener('keydown', onKeydown, { capture: true });
}
