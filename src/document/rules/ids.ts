import { type Problem, problem } from '../../diagnostics/index.ts';
import { type Path, pathText } from '../json/path.ts';
import type { Book } from '../schema/book.ts';
import type { Part } from '../schema/parts.ts';

/** The rule of ids: every part, row and column of the book has one of its own. */
export function idProblems(book: Book): Problem[] {
  const problems: Problem[] = [];
  const owners = new Map<string, Path>();
  const claim = (id: string, at: Path): void => {
    const first = owners.get(id);
    if (first === undefined) owners.set(id, at);
    else {
      const facts = { path: pathText(at), id, first: pathText(first) };
      problems.push(problem('book-id-twice', { from: 0, to: 0 }, facts));
    }
  };
  for (const [s, sheet] of book.sheets.entries()) {
    for (const [p, part] of sheet.parts.entries()) {
      const at = ['sheets', s, 'parts', p];
      claim(part.id, at);
      const [list, items] = itemsOf(part);
      for (const [i, item] of items.entries()) claim(item.id, [...at, list, i]);
    }
  }
  return problems;
}

function itemsOf(part: Part): readonly [list: string, items: readonly { readonly id: string }[]] {
  if (part.kind === 'rows') return ['rows', part.rows];
  return ['columns', part.kind === 'table' ? part.columns : []];
}
