/**
 * Scrolls the page an element stands on, and nothing around that page, until the element has so much room (px) below it
 * in the window; as far as it stays in sight itself.
 */
export function makeRoomBelow(element: Element, room: number): void {
  const { top, bottom } = element.getBoundingClientRect();
  const lacking = bottom + room - innerHeight;
  const page = scrollerOf(element);
  if (lacking <= 0 || !page) return;
  page.scrollTop += Math.min(lacking, Math.max(0, top - page.getBoundingClientRect().top - 8));
}

/** The nearest box around an element that scrolls up and down, in whatever tree it is. */
function scrollerOf(element: Element): Element | undefined {
  for (let at = parentOf(element); at; at = parentOf(at))
    if (/auto|scroll/.test(getComputedStyle(at).overflowY)) return at;
  return undefined;
}

function parentOf(element: Element): Element | null {
  if (element.assignedSlot ?? element.parentElement) return element.assignedSlot ?? element.parentElement;
  const root = element.getRootNode();
  return root instanceof ShadowRoot ? root.host : null;
}
