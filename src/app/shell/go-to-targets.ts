import type { Book, Part } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { spelledOut } from '../editor/greek.ts';
import type { CellPlace } from '../session/place.ts';
import { labelOf, localName, placeOfId } from '../session/places.ts';

/** Something of a book that can be gone to. */
export interface Target {
  readonly kind: 'sheet' | 'part' | 'name';
  /** The name in formulas; empty for a sheet or a part. */
  readonly name: string;
  readonly label: string;
  /** The key of the sheet it is on, or is. */
  readonly sheet: string;
  /** Its cell, looked up when it is gone to; a sheet has none. */
  readonly place: () => CellPlace | undefined;
}

/**
 * The targets that what is typed fits, best first: its name, on its sheet or as other sheets write it, the beginning of
 * it, words of what it is, a part of its name. Nothing typed fits all.
 */
export function targetsFor(typed: string, notebook: Notebook): readonly Target[] {
  const wanted = folded(typed.trim());
  const rank = ({ name, label, sheet }: Target): number => {
    if (wanted === '') return 0;
    const own = folded(name);
    // Before its point the name of a sheet tells nothing apart.
    const names = own === '' ? [] : wanted.includes('.') ? [own, `${folded(sheet)}.${own}`] : [own];
    if (names.includes(wanted)) return 0;
    if (names.some((one) => one.startsWith(wanted))) return 1;
    if (label.toLowerCase().includes(wanted)) return 2;
    return own.includes(wanted) ? 3 : none;
  };
  return [...sheetTargets(notebook.book), ...nameTargets(notebook), ...partTargets(notebook.book)]
    .map((target) => ({ target, at: rank(target) }))
    .filter(({ at }) => at < none)
    .sort((a, b) => a.at - b.at)
    .map(({ target }) => target);
}

const none = 4;

const folded = (text: string): string => spelledOut(text).toLowerCase();

function sheetTargets({ sheets }: Book): readonly Target[] {
  return sheets.map(({ key, title }) => ({
    kind: 'sheet',
    name: '',
    label: title || key,
    sheet: key,
    place: () => undefined,
  }));
}

function nameTargets(notebook: Notebook): readonly Target[] {
  return [...notebook.model.items.values()].map((item) => ({
    kind: 'name',
    name: localName(item),
    label: labelOf(item),
    sheet: item.sheet,
    place: () => placeOfId(notebook, item.id),
  }));
}

/** The headings of a book, and the titles of its parts. */
function partTargets({ sheets }: Book): readonly Target[] {
  return sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => {
      const title = titleOf(part);
      if (title === '') return [];
      const field = part.kind === 'prose' ? 'text' : 'title';
      const place = { sheet: key, part: part.id, item: '', field };
      return [{ kind: 'part', name: '', label: title, sheet: key, place: () => place } as const];
    }),
  );
}

function titleOf(part: Part): string {
  if (part.kind === 'prose') return part.role === 'heading' ? part.text : '';
  return part.title ?? '';
}
