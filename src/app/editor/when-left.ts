/**
 * Runs `leave` when the person has really left a field that has just lost the focus: not where it lost it because it
 * was taken off the page, nor because the window lost it, to which the person comes back.
 */
export function whenLeft(field: Element, leave: () => void): void {
  queueMicrotask(() => {
    if (field.isConnected && document.hasFocus()) leave();
  });
}
