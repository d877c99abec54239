/** Whether a press is on a bar that scrolls what it is in. */
export function isOnScrollBar(event: Event): boolean {
  const [target] = event.composedPath();
  if (!(event instanceof MouseEvent) || !(target instanceof HTMLElement)) return false;
  const { clientWidth, clientHeight, clientLeft, clientTop, scrollWidth, scrollHeight } = target;
  if (scrollWidth <= clientWidth && scrollHeight <= clientHeight) return false;
  // Offsets of the event itself are those from the element that the window sees, which is the whole app.
  const { left, top } = target.getBoundingClientRect();
  return event.clientX - left - clientLeft > clientWidth || event.clientY - top - clientTop > clientHeight;
}
