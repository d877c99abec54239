/** The regions of an open book, in the order of the F6 key. */
const regions = [
  'quay-top-bar',
  'quay-sheet-list',
  'quay-main-view',
  'quay-side-panel',
  'quay-status-bar',
] as const;

const focusable = ':is(button, input, summary, a[href], [tabindex="0"]):not(:disabled, [tabindex="-1"])';

/** Moves the focus to the next region that has something to focus, or to the one before, by `step`. */
export function goToRegion(book: ParentNode, step: 1 | -1): void {
  const all = regions.flatMap((name) => book.querySelector<HTMLElement>(name) ?? []).filter(isShown);
  const here = all.findIndex((region) => region.matches(':focus-within') || holdsFocus(region));
  for (let steps = 1; steps <= all.length; steps += 1) {
    const region = all[(((here + step * steps) % all.length) + all.length) % all.length];
    const target = region && firstIn(region);
    if (!target) continue;
    target.focus();
    target.scrollIntoView({ block: 'nearest' });
    return;
  }
}

/** Moves the focus to a region. */
export function focusRegion(book: ParentNode, name: (typeof regions)[number]): void {
  const region = book.querySelector<HTMLElement>(name);
  if (region) firstIn(region)?.focus();
}

/** Whether a region is not folded; the main view has no box of its own. */
function isShown(region: HTMLElement): boolean {
  return !region.hidden;
}

/** A region without a box of its own does not match `:focus-within`. */
function holdsFocus({ shadowRoot }: HTMLElement): boolean {
  return shadowRoot?.activeElement != null;
}

/** What takes the focus in a region: on the page the active cell, else the first thing that can. */
function firstIn({ shadowRoot }: HTMLElement): HTMLElement | null {
  const page = shadowRoot?.querySelector(
    'quay-sheet, quay-overview, quay-about-page, quay-sources-page, quay-origin-page, quay-checking-page, quay-signing-page, quay-steps-page, quay-recheck-page',
  )?.shadowRoot;
  return (
    page?.querySelector<HTMLElement>(':is([role="gridcell"], [role="columnheader"])[tabindex="0"]') ??
    (page ?? shadowRoot)?.querySelector<HTMLElement>(focusable) ??
    null
  );
}
