import type { LitElement } from 'lit';

/** How far a page was scrolled when it was left, and where in the window its chosen cell stood. */
export interface ScrollState {
  readonly top: number;
  readonly cellAt?: number;
}

/** How a page stands before another sheet is drawn on it. */
export function readScroll({
  scrollTop: top,
  renderRoot,
}: Pick<LitElement, 'scrollTop' | 'renderRoot'>): ScrollState {
  const cell = renderRoot.querySelector('[data-field][aria-selected="true"]');
  return cell ? { top, cellAt: cell.getBoundingClientRect().top } : { top };
}

/** What is asked of a page that is brought back: its chosen cell as drawn, and whether it still stands where it was brought. */
interface Back {
  readonly cell: () => HTMLElement | undefined;
  readonly stays: () => boolean;
}

/**
 * Brings a page back to where it stood when it was left. Parts above have their heights only once they were near, so for
 * some frames the chosen cell is brought again to its height in the window.
 */
export function restoreScroll(page: HTMLElement, kept: ScrollState, back: Back, frames = 6): void {
  const cell = back.cell();
  if (cell && kept.cellAt !== undefined) page.scrollTop += cell.getBoundingClientRect().top - kept.cellAt;
  else page.scrollTop = kept.top;
  if (frames === 0 || kept.top === 0) return;
  requestAnimationFrame(() => {
    if (back.stays()) restoreScroll(page, kept, back, frames - 1);
  });
}
