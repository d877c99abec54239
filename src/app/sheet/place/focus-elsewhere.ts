import { isOnScrollBar } from '../scroll-bar.ts';

/** Whether nothing that takes keys has the focus, as after what had it was taken off the page. */
export function isFocusLost(page: HTMLElement): boolean {
  const { activeElement } = document;
  return activeElement === document.body || isBare(page) || isBare(activeElement?.shadowRoot?.activeElement);
}

/** Whether an element that only holds others has the focus itself: the page, or what stands beside it, not over it. */
function isBare(element: Element | null | undefined): boolean {
  const holds = element?.matches('quay-sheet, .side:not(.over)') === true;
  return holds && element.matches(':focus') && !element.shadowRoot?.activeElement;
}

/** What takes keys, does something when it is pressed, or shows what is not to be left by a press. */
const takesPresses =
  '.cell, button, summary, a, input, textarea, select, label, dialog, [popover], [contenteditable], svg, math, .side.over';

/** Where a press is that takes no focus: on blank paper or the bar that scrolls it, beside it, around a field, on another bar. */
export type Blank = 'page' | 'bar of the page' | 'beside' | 'field' | 'scroll bar';

/** On which blank a press is; undefined where it is on something, or on words, which may be selected. */
export function blankAt(event: MouseEvent, page: HTMLElement): Blank | undefined {
  const [target] = event.composedPath();
  if (!(target instanceof Element)) return undefined;
  if (isOnScrollBar(event)) return target === page ? 'bar of the page' : 'scroll bar';
  const onPage = target === page || target.getRootNode() === page.shadowRoot;
  if (onPage && target.closest('.edited, .refusal')) return 'field';
  if (event.composedPath().some((one) => one instanceof Element && one.matches(takesPresses)))
    return undefined;
  const says = [...target.childNodes].some(
    (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '',
  );
  if (says) return undefined;
  return onPage ? 'page' : 'beside';
}

/** Whether the person is typing in a field that is not on the page. */
export function typesElsewhere(page: HTMLElement): boolean {
  return !page.matches(':focus-within') && isTyping();
}

/** Whether the person is typing in a field of no cell: one that is not on the page, or one of the title block on it. */
export function typesInNoCell(page: HTMLElement): boolean {
  return !page.shadowRoot?.activeElement && isTyping();
}

function isTyping(): boolean {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active?.matches('input:not([type="radio"]), textarea, select, [contenteditable]') ?? false;
}
