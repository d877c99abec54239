import type { Notebook } from './notebook.ts';

/** Whether a check holds only by stated values, as it was worked out last. */
export function holdsByStated({ verdict, easedBy }: Notebook, id: string): boolean {
  return verdict(id)?.holds === true && easedBy(id)?.data.only === true;
}
