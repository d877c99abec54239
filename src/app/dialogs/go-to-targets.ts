import { aboutsOf, type Book, type Part } from '../../document/index.ts';
import { spelledOut } from '../../language/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { labelOf, localName } from '../../record/index.ts';
import { type OverviewPart, overviewTitles } from '../view-model/page-view.ts';
import type { CellPlace } from '../view-model/place.ts';
import { placeOfId } from '../view-model/places.ts';

/** Something of a book that can be gone to. */
export interface Target {
  readonly kind: 'page' | 'sheet' | 'part' | 'name';
  /** The name in formulas; empty for all else. */
  readonly name: string;
  readonly label: string;
  /** The key of the sheet it is on, or is; empty for another page. */
  readonly sheet: string;
  readonly sheetTitle: string;
  /** Its cell, looked up when it is gone to; a sheet has none. */
  readonly place: () => CellPlace | undefined;
  /** The page that is no sheet, or the list on it. */
  readonly overview?: OverviewPart;
}

/**
 * The targets that what is typed fits, best first: what is called just so, by its name (on its sheet, in its table, or as
 * other sheets write it) or in words; what begins so; what has a word that begins so; what has it anywhere; of several
 * words what has all of them in any order, in its name, its description or the title of its sheet. Nothing typed fits all.
 */
export function targetsFor(typed: string, notebook: Notebook): readonly Target[] {
  const wanted = typed.trim();
  return [
    ...sheetTargets(notebook.book),
    ...pageTargets(notebook.book),
    ...nameTargets(notebook),
    ...partTargets(notebook.book),
  ]
    .map((target) => ({
      target,
      at: wanted === '' ? 0 : ways.findIndex((matches) => matches(target, wanted)),
    }))
    .filter(({ at }) => at >= 0)
    .sort((a, b) => a.at - b.at)
    .map(({ target }) => target);
}

/** How a target may fit what is typed, best first. */
const ways: readonly ((target: Target, wanted: string) => boolean)[] = [
  (target, wanted) => namesOf(target, wanted).includes(spelledOut(wanted)),
  (target, wanted) => namesOf(target, wanted).some((name) => folded(name) === folded(wanted)),
  (target, wanted) => namesOf(target, wanted).some((name) => joined(name) === joined(wanted)),
  ({ label }, wanted) => label.toLowerCase() === wanted.toLowerCase(),
  (target, wanted) => namesOf(target, wanted).some((name) => folded(name).startsWith(folded(wanted))),
  ({ label }, wanted) => label.toLowerCase().startsWith(wanted.toLowerCase()),
  ({ label }, wanted) => label.toLowerCase().includes(` ${wanted.toLowerCase()}`),
  ({ label }, wanted) => label.toLowerCase().includes(wanted.toLowerCase()),
  ({ name }, wanted) => folded(name).includes(folded(wanted)),
  ({ name, label, sheetTitle }, wanted) => {
    const words = wanted.toLowerCase().split(/\s+/);
    const all = `${joined(name)} ${label} ${sheetTitle}`.toLowerCase();
    return words.length > 1 && words.every((word) => all.includes(word));
  },
];

/** A name as it is read aloud: R_d is Rd. */
const joined = (name: string): string => spelledOut(name).replaceAll('_', '');

/** What a name may be called by, spelled out; before its point the name of a sheet tells nothing apart. */
function namesOf({ name, sheet }: Target, wanted: string): readonly string[] {
  const own = spelledOut(name);
  if (own === '') return [];
  if (wanted.includes('.')) return [own, `${spelledOut(sheet)}.${own}`];
  return [own, own.slice(own.lastIndexOf('.') + 1)];
}

const folded = (text: string): string => spelledOut(text).toLowerCase();

function sheetTargets({ sheets }: Book): readonly Target[] {
  return sheets.map(({ key, title }) => ({
    kind: 'sheet',
    name: '',
    label: title || key,
    sheet: key,
    sheetTitle: title || key,
    place: () => undefined,
  }));
}

/** The pages that are no sheets, and the lists on them. */
function pageTargets(book: Book): readonly Target[] {
  const parts = Object.keys(overviewTitles) as OverviewPart[];
  const hasAbout = aboutsOf(book).some(({ about }) => about);
  // Step by step goes to the line in hand, from its panel.
  const isThere = (part: OverviewPart): boolean => part !== 'steps' && (part !== 'about' || hasAbout);
  return parts.filter(isThere).map((overview) => ({
    kind: 'page',
    name: '',
    label: overviewTitles[overview],
    sheet: '',
    sheetTitle: '',
    place: () => undefined,
    overview,
  }));
}

function nameTargets(notebook: Notebook): readonly Target[] {
  const titles = new Map(notebook.book.sheets.map(({ key, title }) => [key, title || key]));
  return [...notebook.model.items.values()].map((item) => ({
    kind: 'name',
    name: localName(item),
    label: labelOf(item),
    sheet: item.sheet,
    sheetTitle: titles.get(item.sheet) ?? item.sheet,
    place: () => placeOfId(notebook, item.id),
  }));
}

/** The headings of a book, and the titles of its parts. */
function partTargets({ sheets }: Book): readonly Target[] {
  return sheets.flatMap(({ key, title: sheetTitle, parts }) =>
    parts.flatMap((part) => {
      const title = titleOf(part);
      if (title === '') return [];
      const field = part.kind === 'prose' ? 'text' : 'title';
      const place = { sheet: key, part: part.id, item: '', field };
      return [{ kind: 'part', name: '', label: title, sheet: key, sheetTitle, place: () => place } as const];
    }),
  );
}

function titleOf(part: Part): string {
  if (part.kind === 'prose') return part.role === 'heading' ? part.text : '';
  return part.title ?? '';
}
