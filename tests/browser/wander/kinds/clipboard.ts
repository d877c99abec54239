import {
  type Book,
  columnAt,
  hasMethods,
  isSame,
  type Line,
  lineAt,
  type Place,
  partAt,
  rowOf,
  tableRowAt,
  takenAt,
  textAt,
  withPart,
  withRows,
  withText,
} from '../book.ts';
import { done, grown, seenWithoutNew, selectedOf } from '../changed-book.ts';
import type { Hands } from '../hands.ts';
import { isOnCells, type Kind, kindOf } from '../kind.ts';
import type { Seen } from '../seen.ts';
import { left, type Outcome, type State, unchanged, unitOf } from '../state.ts';
import {
  isComputedAt,
  isStatedAt,
  statableAt,
  statedAnew,
  statementAt,
  withComputed,
  withStatement,
} from '../stated.ts';
import { isTaken } from '../units-beside.ts';
import { statedAgain } from './lines.ts';
import { typedInto } from './typing.ts';

type Cells = readonly (readonly string[])[];

const asText = (cells: Cells): string => cells.map((row) => row.join('\t')).join('\n');

async function paste(hands: Hands, text: string): Promise<boolean> {
  await hands.page.evaluate((copied) => navigator.clipboard.writeText(copied), text);
  await hands.press('Control+v');
  await hands.rest();
  return true;
}

/** Nothing was taken, and a sentence or a dialog says why. */
function refused(state: State): Outcome {
  return { ...unchanged(state, { kind: 'any' }), said: ' ' };
}

/** The place so many rows down and cells right; undefined where the sheet has none for it. */
function neighbour(book: Book, from: Place, down: number, right: number): Place | undefined {
  const part = partAt(book, from);
  const row = rowOf(from.item);
  if (!part) return undefined;
  if (row !== undefined && part.columns) {
    const column = part.columns[part.columns.findIndex(({ id }) => id === from.field) + right];
    // A calculated column takes one column of values, and no rows.
    const stays = right === 0 && row + down < (part.length ?? 0);
    return column && (column.kind === 'given' || stays)
      ? { ...from, item: `r${row + down}`, field: column.id }
      : undefined;
  }
  // The lines that explain columns are no block.
  if (part.columns) return down === 0 && right === 0 ? from : undefined;
  const lines = part.rows ?? [];
  const line = lines[lines.findIndex(({ id }) => id === from.item) + down];
  if (lineAt(book, from) === undefined) return down === 0 && right === 0 ? from : undefined;
  const field = fields[fields.indexOf(from.field) + right];
  return line && field !== undefined ? { ...from, item: line.id, field } : undefined;
}

const fields = ['reference', 'name', 'label', 'value', 'unit'];

/** The book with a block of texts put in from a place on, a table longer where it must be; undefined if a text has no place. */
function putIn(state: State, from: Place, cells: Cells, before: Seen, after: Seen): Book | undefined {
  let { book } = state;
  const row = rowOf(from.item);
  const table = partAt(book, from);
  if (row !== undefined && table?.columns) {
    if (table.length === undefined) return undefined;
    const more = columnAt(book, from)?.kind === 'given' ? Math.max(0, row + cells.length - table.length) : 0;
    const longer = (column: Line): Line =>
      withRows(column, (own) => [...own, ...(new Array<string>(more).fill('') as never[])]);
    book = withPart(book, from, (part) => ({
      ...part,
      length: (part.length ?? 0) + more,
      columns: (part.columns ?? []).map(longer),
    }));
  }
  for (const [down, texts] of cells.entries())
    for (const [right, text] of texts.entries()) {
      const place = neighbour(book, from, down, right);
      const takes = place && takenAt(book, place);
      if (!place || !takes) return undefined;
      if (takes === 'name') return undefined;
      const beside = before.cells.find(
        (cell) => JSON.stringify(cell.place) === JSON.stringify({ ...place, sheet: cell.place.sheet }),
      );
      const head = before.cells.find(
        (cell) => cell.place.part === place.part && cell.place.field === place.field && columnAt(book, place),
      );
      const own = unitOf(book, place);
      const written = textAt(after.book, place) ?? '';
      const taken = isTaken(written, text, beside?.unit ?? head?.unit ?? own ?? '', own) ? written : text;
      const kind = statableAt(book, place);
      // Of a check nobody said which side.
      if (kind === 'check') return undefined;
      book = kind
        ? withStatement(book, place, statedAnew(statementAt(book, place), taken))
        : withText(book, place, taken);
    }
  return book;
}

/**
 * Whether a block would come over something else than values: over a calculated column beside others, over a formula that
 * is still to be written, over the rows of a series.
 */
function meetsFormula(seen: Seen, cells: Cells): boolean {
  const selected = selectedOf(seen);
  const [first] = selected;
  const isFormula = (place: Place | undefined): boolean =>
    place !== undefined &&
    ((takenAt(seen.book, place) === 'formula' && !isComputedAt(seen.book, place)) ||
      (place.field === 'reference' && hasMethods(seen.book, place)));
  if (!first || selected.some(isFormula)) return true;
  if (
    new Set(selected.map(({ field }) => field)).size > 1 &&
    selected.some((one) => statableAt(seen.book, one))
  )
    return true;
  const columns = tableRowAt(seen.book, first) === undefined ? undefined : partAt(seen.book, first)?.columns;
  const from = columns?.findIndex(({ id }) => id === first.field) ?? 0;
  return cells.some((row, down) =>
    row.some((_, right) =>
      columns
        ? row.length > 1 && (columns[from + right]?.kind ?? 'given') !== 'given'
        : isFormula(neighbour(seen.book, first, down, right)),
    ),
  );
}

function pasted(state: State, cells: Cells, before: Seen, after: Seen): readonly Outcome[] {
  const selected = selectedOf(before);
  const [first] = selected;
  const [only] = cells;
  if (!first) return [unchanged(state)];
  // Words take a text as it is, with the tabs and line ends that part its cells.
  if (selected.length === 1 && takenAt(state.book, first) === 'prose')
    return [done(state, withText(state.book, first, asText(cells)))];
  const outcomes: Outcome[] = [];
  const one = cells.length === 1 && only?.length === 1 ? only[0] : undefined;
  if (one !== undefined && selected.length > 1) {
    let all: Book | undefined = state.book;
    for (const place of selected) all = all && putIn({ ...state, book: all }, place, [[one]], before, after);
    if (all) outcomes.push(done(state, all));
  } else {
    const book = putIn(state, first, cells, before, after);
    if (book) outcomes.push(done(state, book));
  }
  return [...outcomes, refused(state)];
}

const block: Kind<Cells> = {
  name: 'paste a block',
  weight: (seen) => (isOnCells(seen) ? 1.6 : 0),
  draw: (seen, chance) => {
    const place = selectedOf(seen)[0];
    const takes = place && takenAt(seen.book, place);
    if (!place || !takes) return undefined;
    // A column of numbers is repeated over all that is selected, units and words among it.
    if (new Set(selectedOf(seen).map(({ field }) => field)).size > 1 && lineAt(seen.book, place))
      return undefined;
    const number = () => String(1 + chance.whole(99));
    if (takes === 'words' || takes === 'prose') return [[`pasted ${number()}`]];
    const [rows, across] = [
      1 + chance.whole(3),
      tableRowAt(seen.book, place) === undefined ? 1 : 1 + chance.whole(3),
    ];
    const cells = Array.from({ length: rows }, () => Array.from({ length: across }, number));
    return meetsFormula(seen, cells) ? undefined : cells;
  },
  perform: (hands, cells) => paste(hands, asText(cells)),
  expect: pasted,
};

/** Texts as they come from letters, other sheets and other countries. */
const foreign: readonly Cells[] = [
  [['1,250']],
  [['12,385'], ['101,220']],
  [['12 345']],
  [['5 kg']],
  [['n/a']],
  [['=1+2']],
  [
    ['Item', 'Area (m²)', 'Thk (mm)'],
    ['slab', '12', '100'],
    ['', '', ''],
    ['Total', '12', ''],
  ],
  [['', '', '', '', '', '', '', '', '', '1']],
  [['One sentence; and another one.']],
];

const foreignText: Kind<Cells> = {
  ...block,
  name: 'paste a foreign text',
  weight: (seen) => (isOnCells(seen) ? 0.8 : 0),
  draw: (seen, chance) => {
    const cells = chance.one(foreign);
    // What is no number may be a formula for a line, or nothing for a cell.
    const isComputed = selectedOf(seen).some((place) => statableAt(seen.book, place));
    return cells && !isComputed && !meetsFormula(seen, cells) ? cells : undefined;
  },
};

const intoEditor: Kind<string> = {
  name: 'paste into the editor',
  weight: (seen) => (seen.editor ? 0.6 : 0),
  draw: (_seen, chance) => `${1 + chance.whole(99)}`,
  perform: (hands, text) => paste(hands, text),
  // The list of a choice has no field: the text is for the cell, which no option of that name can take.
  expect: (state, text, before, after) => [
    ...typedInto(state, text, before, after),
    ...(state.draft && takenAt(state.book, state.draft.place) === 'choice'
      ? left(state, after).map((one) => ({ ...one, said: text }))
      : []),
  ],
};

const foreignLines: Kind<Cells> = {
  name: 'paste lines of a spreadsheet',
  weight: (seen) => (isOnCells(seen) && seen.place && lineAt(seen.book, seen.place) ? 0.8 : 0),
  draw: (_seen, chance) => {
    const line = (): readonly string[] => {
      const number = 1 + chance.whole(999);
      return ['', `q_${number}`, `pasted line ${number}`, String(number), 'm'];
    };
    return [line(), line()];
  },
  perform: (hands, cells) => paste(hands, asText(cells)),
  expect: (state, cells, _before, after) => {
    const says = (line: Line, [, name, label, value, unit]: readonly string[]): boolean =>
      line.name === name &&
      line.label === label &&
      (line.entry ?? line.formula) === value &&
      line.unit === unit;
    const passes = (fresh: readonly Line[]): boolean =>
      fresh.length === cells.length && fresh.every((line, at) => says(line, cells[at] ?? []));
    const inserted = grown(state, after, passes);
    return [refused(state), inserted];
  },
};

const ownLines: Kind<{ readonly from: Place; readonly to: Place; readonly at: Place }> = {
  name: 'copy lines and paste them',
  weight: () => 0.7,
  draw: (seen, chance) => {
    const own = seen.cells
      .map(({ place }) => place)
      .filter((place) => lineAt(seen.book, place) && partAt(seen.book, place)?.rows);
    const from = chance.one(own.filter(({ field }) => field === 'reference'));
    const to = chance.one(own.filter(({ part, field }) => part === from?.part && field === 'unit'));
    const at = chance.one(own.filter(({ field }) => field === 'label'));
    return from && to && at && at.item !== to.item ? { from, to, at } : undefined;
  },
  perform: async (hands, { from, to, at }) => {
    for (const [place, keys] of [
      [from, []],
      [to, ['Shift']],
    ] as const) {
      const point = await hands.cell(place);
      if (!point) return false;
      for (const key of keys) await hands.page.keyboard.down(key);
      await hands.clickAt(point);
      for (const key of keys) await hands.page.keyboard.up(key);
      await hands.rest();
      if (await hands.isEditing()) return true;
    }
    // A line may have moved away under the pointer: who sees that copies nothing.
    if (!(await hands.isSelected(to))) return true;
    await hands.press('Control+c');
    const point = await hands.cell(at);
    if (!point) return false;
    await hands.clickAt(point);
    await hands.rest();
    // The line that was left folds while the lines are copied, and a press made just then meets what has moved up.
    if (!(await hands.isOn(at))) return true;
    await hands.press('Control+v');
    await hands.rest();
    return true;
  },
  expect: (state, { from, to, at }, _before, after) =>
    left(state, seenWithoutNew(after, state)).flatMap((gone): readonly Outcome[] => {
      if (gone.editor.kind !== 'closed') return [gone];
      const rows = partAt(gone.book, from)?.rows ?? [];
      const ends = [from, to].map(({ item }) => rows.findIndex(({ id }) => id === item));
      const copied = rows.slice(Math.min(...ends), Math.max(...ends) + 1);
      const rest = ({ label, entry, unit, kind, reference }: Line) =>
        JSON.stringify([label, entry, unit, kind, reference]);
      const passes = (fresh: readonly Line[]): boolean =>
        fresh.length === copied.length &&
        fresh.every((line, index) => rest(line) === rest(copied[index] ?? line));
      // Who has pasted is on the first of the new lines; who is where nothing was pasted has missed the cell.
      const missed = isSame(after.place, at) ? [] : [gone];
      return [grown({ ...state, ...gone }, after, passes), ...missed];
    }),
};

const cut: Kind<null> = {
  name: 'cut cells',
  weight: (seen) =>
    isOnCells(seen) && seen.selected.length < 2 && !(seen.place && hasMethods(seen.book, seen.place))
      ? 0.3
      : 0,
  draw: () => null,
  perform: async (hands) => {
    await hands.press('Control+x');
    await hands.rest();
    return true;
  },
  expect: (state, _args, { place }) => {
    const takes = place && takenAt(state.book, place);
    if (place && isStatedAt(state.book, place)) return [done(state, withComputed(state.book, place))];
    const calculated = takes === 'formula' && place && tableRowAt(state.book, place) !== undefined;
    if (!place || !takes || takes === 'name' || calculated || textAt(state.book, place) === '')
      return [unchanged(state)];
    return [done(state, withText(state.book, place, ''))];
  },
};

/** A place where a value stands that is not the one of a list: entered, or stated. */
const holdsValue = (book: Book, place: Place): boolean => {
  const isValue = place.field === 'value' || tableRowAt(book, place) !== undefined;
  return isValue && (takenAt(book, place) === 'entry' || isComputedAt(book, place));
};

const stated: Kind<{ readonly from: Place; readonly to: Place }> = {
  name: 'copy a stated value and paste it',
  weight: (seen) => (seen.cells.some(({ place }) => statementAt(seen.book, place)) ? 2 : 0),
  draw: (seen, chance) => {
    const places = seen.cells.map(({ place }) => place);
    const from = chance.one(places.filter((place) => statementAt(seen.book, place)));
    const to = chance.one(places.filter((place) => holdsValue(seen.book, place)));
    return from && to && !isSame(from, to) ? { from, to } : undefined;
  },
  perform: async (hands, { from, to }) => {
    for (const [place, key] of [
      [from, 'Control+c'],
      [to, 'Control+v'],
    ] as const) {
      const point = await hands.cell(place);
      if (!point) return false;
      await hands.clickAt(point);
      await hands.rest();
      if (!(await hands.isOn(place))) return true;
      await hands.press(key);
      await hands.rest();
    }
    return true;
  },
  expect: (state, { from, to }, _before, after) =>
    left(state, after).flatMap((gone): readonly Outcome[] => {
      if (gone.editor.kind !== 'closed') return [gone];
      const stand = { ...state, ...gone, draft: undefined };
      const pasted = statedAgain(gone.book, from, to, after);
      return [done(stand, pasted), refused(stand), ...(isSame(after.place, to) ? [] : [gone])];
    }),
};

/** What goes by the clipboard. */
export const clipboardKinds = [
  kindOf(block),
  kindOf(foreignText),
  kindOf(intoEditor),
  kindOf(foreignLines),
  kindOf(ownLines),
  kindOf(stated),
  kindOf(cut),
];
