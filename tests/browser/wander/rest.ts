/**
 * Runs on the page. Resolves when what a person sees has come to rest: three frames in a row draw the same, each looked at
 * once all that waited for it is done, and the line the person is on has expanded, alone of all lines: it does so once
 * they rest on it, and moves what they would press next. No time is waited for: on a slow machine frames are long, on a fast
 * one short. Throws where `limit` frames go by first.
 */
export async function comeToRest(limit: number): Promise<void> {
  const frame = (): Promise<void> =>
    new Promise((done) => requestAnimationFrame(() => setTimeout(() => setTimeout(done))));
  const drawn = (): string => {
    const roots: (Document | ShadowRoot)[] = [document];
    const signs: string[] = [];
    for (const root of roots) {
      signs.push(root instanceof ShadowRoot ? root.innerHTML : document.title);
      for (const element of root.querySelectorAll('*')) {
        if (element.shadowRoot) roots.push(element.shadowRoot);
        if (element.scrollTop > 0) signs.push(`${element.tagName} ${element.scrollTop}`);
        if (element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement)
          signs.push(element.value);
        if (element.matches(':focus, :popover-open, [open]')) signs.push(element.tagName);
      }
    }
    return signs.join('\n');
  };
  /** Whether a line is still to expand or to collapse. */
  const folds = (): boolean => {
    const desk = document.querySelector('quay-app')?.shadowRoot?.querySelector('quay-main-view');
    const page = desk?.shadowRoot?.querySelector('quay-sheet')?.shadowRoot;
    const selected = page?.querySelectorAll('[data-field][aria-selected="true"]') ?? [];
    const on = selected.length === 1 ? selected[0]?.closest('quay-line') : undefined;
    const lines = page?.querySelectorAll<HTMLElement & { readonly expanded?: boolean }>('quay-line') ?? [];
    return [...lines].some((line) => (line.expanded === true) !== (line === on));
  };
  await document.fonts.ready;
  let [before, same] = ['', 0];
  for (let frames = 0; same < 2; frames += 1) {
    if (frames > limit) throw new Error(`the page does not come to rest in ${limit} frames`);
    await frame();
    const now = drawn();
    same = now === before && !folds() ? same + 1 : 0;
    before = now;
  }
}
