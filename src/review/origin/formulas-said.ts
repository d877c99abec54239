import type { Book } from '../../document/index.ts';
import { namesOf } from '../../notebook/index.ts';
import { fieldsAtStart } from './fields-at-start.ts';

/** All by which a book computes, and nothing of what is entered or stated: as long as it is the same, so is what its cases come to. */
export function formulasSaid(book: Book): string {
  return [...namesOf(book)]
    .map(([id, part]) => {
      const fields = [...fieldsAtStart(part)].filter(([, { computes }]) => computes);
      return `${id}: ${fields.map(([field, { text }]) => `${field} ${text}`).join('; ')}`;
    })
    .join('\n');
}
