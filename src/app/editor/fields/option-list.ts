import { html, nothing, type TemplateResult } from 'lit';
import type { Suggestion } from '../completion/suggestion.ts';

/** A list to choose from below a field; `take` is told the index that was clicked. */
export function drawOptions(
  options: readonly Pick<Suggestion, 'text' | 'detail'>[],
  chosen: number,
  label: string,
  take: (index: number) => void,
): TemplateResult {
  return html`<ul id="options" class="options" role="listbox" aria-label=${`choices for ${label}`}>${options.map(
    ({ text, detail }, index) =>
      html`<li
        id=${`option-${index}`}
        role="option"
        aria-selected=${index === chosen ? 'true' : 'false'}
        @click=${() => take(index)}
      ><span>${text === '' ? 'blank' : text}</span>${detail === '' ? nothing : html`<span class="detail">${detail}</span>`}</li>`,
  )}</ul>`;
}

/** Scrolls the list so that the chosen option is seen. */
export function showChosen(root: DocumentFragment | HTMLElement): void {
  const list = root.querySelector<HTMLElement>('.options');
  const option = list?.querySelector<HTMLElement>('[aria-selected="true"]');
  if (!list || !option) return;
  const over = option.offsetTop - list.offsetTop;
  if (over < list.scrollTop) list.scrollTop = over;
  else if (over + option.offsetHeight > list.scrollTop + list.clientHeight)
    list.scrollTop = over + option.offsetHeight - list.clientHeight;
}
