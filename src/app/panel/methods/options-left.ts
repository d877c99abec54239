import { html, nothing, type TemplateResult } from 'lit';
import { type InputItem, type Item, indexFor, type Notebook } from '../../../notebook/index.ts';
import { labelOf, localName } from '../../../record/index.ts';
import { textSources } from '../../editing/methods/text-sources.ts';
import type { Session } from '../../session/session.ts';
import { placeOfId } from '../../view-model/places.ts';

/** A line that goes by a choice, and the options of the choice that none of its methods is for. */
export interface OptionsLeft {
  readonly item: Item;
  readonly options: readonly string[];
}

/** The lines and columns that a choice decides, itself or through texts that pass it on, with the options they lack. */
export function optionsLeft(notebook: Notebook, choice: InputItem): readonly OptionsLeft[] {
  if (choice.row.kind !== 'choice') return [];
  return [...notebook.model.items.values()].flatMap((item): readonly OptionsLeft[] => {
    if (!('methods' in item) || item.methods?.byId === undefined) return [];
    const by = notebook.model.items.get(item.methods.byId);
    const list = by && textSources(notebook, by).lists.find(({ id }) => id === choice.id);
    const methods = item.methods.list.map(({ method }) => method);
    const options = (list?.options ?? []).filter(({ value }) => indexFor(methods, value) < 0);
    return options.length === 0 ? [] : [{ item, options: options.map((one) => one.label || one.value) }];
  });
}

/** The other lines and columns that go by a list of options and have no method for one that it gets. */
export function linesToFollow(notebook: Notebook, list: string, line: string): readonly Item[] {
  return [...notebook.model.items.values()].filter((item) => {
    if (item.id === line || !('methods' in item) || item.methods?.byId === undefined) return false;
    const by = notebook.model.items.get(item.methods.byId);
    const isDecided = by !== undefined && textSources(notebook, by).lists.some(({ id }) => id === list);
    return isDecided && item.methods.list.every(({ method }) => method.for !== undefined);
  });
}

/** Says at a choice which lines have no method for one of its options. */
export function drawOptionsLeft(session: Session, item: InputItem): TemplateResult | typeof nothing {
  const all = optionsLeft(session.notebook, item);
  if (all.length === 0) return nothing;
  const go = (id: string): void => {
    const place = placeOfId(session.notebook, id);
    if (place) session.jumpTo(place);
  };
  return html`${all.map(
    ({ item: one, options }) => html`<div class="problem warning" role="note">
      <p>
        ${localName(one)} (${labelOf(one)}) has no method for
        ${options.map((option) => `“${option}”`).join(', ')}
      </p>
      <button class="fix" @click=${() => go(one.id)}>Go to ${localName(one)}</button>
    </div>`,
  )}`;
}
