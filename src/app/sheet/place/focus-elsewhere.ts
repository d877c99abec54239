/** Whether nothing has the focus, as after what had it was taken off the page. */
export function isFocusLost(page: HTMLElement): boolean {
  const { activeElement } = document;
  return activeElement === document.body || (page.matches(':focus') && !page.shadowRoot?.activeElement);
}

/** Whether the person is typing in a field that is not on the page. */
export function typesElsewhere(page: HTMLElement): boolean {
  if (page.matches(':focus-within')) return false;
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active?.matches('input:not([type="radio"]), textarea, select, [contenteditable]') ?? false;
}
