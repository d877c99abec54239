/** Whether any of an element lies within what a page that scrolls shows of itself. */
export function isInSight(element: Element, page: Element): boolean {
  const [own, frame] = [element.getBoundingClientRect(), page.getBoundingClientRect()];
  return own.bottom > frame.top && own.top < frame.bottom && own.height > 0;
}

/** Brings a cell into sight up or down, and leaves the page as it is sideways. */
export function scrollUpOrDownTo(cell: Element, page: Element): void {
  const { scrollLeft } = page;
  cell.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  page.scrollLeft = scrollLeft;
}
