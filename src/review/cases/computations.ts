import { methodWords, type Notebook } from '../../notebook/index.ts';

/** One way a line, check or column of a template is computed: by its one formula, or by one of its methods. */
export interface Computation {
  /** `sheet.name` or `sheet.table.column`. */
  readonly id: string;
  /** The id of the method. */
  readonly method?: string;
  /** What it is called: the id, and what the method is for. */
  readonly name: string;
}

/** Every calculated line, check and calculated column of a book, those with methods once for each. */
export function computationsOf(notebook: Notebook): readonly Computation[] {
  return [...notebook.model.items.values()].flatMap((item): readonly Computation[] => {
    if (item.kind !== 'formula' && item.kind !== 'formula column') return [];
    if (item.kind === 'formula column' && item.column.kind !== 'calc') return [];
    const { id, methods } = item;
    if (!methods) return [{ id, name: id }];
    return methods.list.map(({ method }) => ({ id, method: method.id, name: nameOf(id, method) }));
  });
}

/** What the computation of a line by a method is called. */
export function nameOf(id: string, method: Parameters<typeof methodWords>[0] | undefined): string {
  return method ? `${id} ${methodWords(method)}` : id;
}
