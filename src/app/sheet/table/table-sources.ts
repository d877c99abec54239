import { html, nothing, type TemplateResult } from 'lit';
import type { Column } from '../../../document/index.ts';
import type { Notebook } from '../../../notebook/index.ts';
import { drawSymbol } from '../line/formula-view.ts';
import { isListed } from './listed-values.ts';

/** Where the values of a table's columns come from that have no line of their own on paper, each reference once. */
export function tableSources(
  notebook: Notebook,
  table: string,
  columns: readonly Column[],
  cite: (reference: string) => string,
): TemplateResult | typeof nothing {
  const bare = columns.filter((column) => hasNoLine(notebook, table, column));
  const byReference = new Map<string, Column[]>();
  for (const column of bare) {
    const { reference = '' } = column;
    const known = byReference.get(reference);
    if (known) known.push(column);
    else byReference.set(reference, [column]);
  }
  byReference.delete('');
  if (byReference.size === 0) return nothing;
  const all = byReference.size === 1 && [...byReference.values()][0]?.length === columns.length;
  return html`<p class="table-sources">
    ${[...byReference].map(
      ([reference, of], at) =>
        html`${at === 0 ? nothing : '; '}${
          all
            ? nothing
            : html`${of.map(({ name }, index) => html`${index === 0 ? nothing : ', '}${drawSymbol(name)}`)}: `
        }${cite(reference)}`,
    )}
  </p>`;
}

/** Whether a column stands in its table alone: it is entered, or its formula lists its values. */
export function hasNoLine(notebook: Notebook, table: string, column: Column): boolean {
  return column.kind === 'given' || isListed(notebook, `${table}.${column.name}`);
}
