const FOCUSABLE =
  'input:not([disabled]), textarea, select, button:not([disabled]), a[href], summary, [tabindex]:not([tabindex="-1"])';

/** Says on the page's body how many dialogs are open that have all keys. */
const MARK = 'data-modals';

function countOpen(by: 1 | -1): void {
  const count = Number(document.body.getAttribute(MARK) ?? 0) + by;
  if (count === 0) document.body.removeAttribute(MARK);
  else document.body.setAttribute(MARK, `${count}`);
}

/** Whether a dialog is open that has the page to itself. */
export function isModalOpen(): boolean {
  return document.body.hasAttribute(MARK);
}

/**
 * Shows a dialog that has the page to itself: until it is closed every key is its own. One that is pressed while nothing
 * has the focus, as behind its last button, brings the focus back to it and does nothing else; Escape closes it.
 */
export function showModal(dialog: HTMLDialogElement | null): void {
  if (!dialog || dialog.open) return;
  dialog.showModal();
  countOpen(1);
  const isLost = (): boolean => document.activeElement === document.body;
  const takeBack = (fromEnd: boolean): void => {
    const fields = [...dialog.querySelectorAll<HTMLElement>(FOCUSABLE)].filter((one) =>
      one.checkVisibility(),
    );
    const field = fields.at(fromEnd ? -1 : 0) ?? dialog;
    field.focus();
  };
  const onKeydown = (event: KeyboardEvent): void => {
    if (event.composedPath().includes(dialog)) {
      // Behind the last field the focus would be on nothing; where the browser's own bar takes it, it has left the page.
      if (event.key === 'Tab')
        setTimeout(() => {
          if (dialog.open && document.hasFocus() && isLost()) takeBack(event.shiftKey);
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
  const watch = new MutationObserver(() => {
    if (dialog.open && dialog.isConnected) return;
    watch.disconnect();
    removeEventListener('keydown', onKeydown, { capture: true });
    countOpen(-1);
  });
  watch.observe(dialog, { attributeFilter: ['open'] });
}
