/**
 * Runs `leave` when the person has really left a field that has just lost the focus: not where it was taken off the page,
 * nor because the window lost the focus, to which the person comes back. What was typed is not the field’s to keep.
 */
export function onLeave(field: Element, leave: () => void): void {
  queueMicrotask(() => {
    if (field.isConnected && !field.matches(':focus-within') && document.hasFocus()) leave();
  });
}
