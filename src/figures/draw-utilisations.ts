import { type Markup, none, together } from '../markup/index.ts';
import {
  byNearness,
  type FormulaItem,
  holdsByStated,
  type Notebook,
  shareOf,
  type Verdict,
  verdictWord,
  writeUtilisation,
} from '../notebook/index.ts';
import type { Drawing } from './drawing.ts';
import { createHatches } from './svg/hatches.ts';
import { tag } from './svg/markup.ts';
import { frameSketch, PAGE_WIDTH } from './svg/page.ts';
import { box, line, path } from './svg/shapes.ts';
import { strong, symbol, text, textElement, type Words, wordsWidth, wrapped } from './svg/words.ts';
import { type UtilisationPart, utilisationParts } from './utilisation-parts.ts';

const ID = 'utilisations';
const ROW = 21;
const BAR = 11;
/** From one line of a description to the next. */
const LINE = 15;

/** The room of the longest verdict up to the edge. */
const VERDICT = Math.ceil(wordsWidth(text('no value'))) + 4;

/** Where the bars begin, where 100 % is, where they are cut, and the width of all. */
interface Columns {
  readonly left: number;
  readonly full: number;
  readonly right: number;
  readonly width: number;
}

const columnsOf: Readonly<Record<'wide' | 'narrow', Columns>> = {
  wide: { left: 300, full: 540, right: 612, width: PAGE_WIDTH },
  narrow: { left: 220, full: 392, right: 448, width: 552 },
};

/** A check with how it stands; no verdict where it has no value, or does not apply. */
interface Checked {
  readonly item: FormulaItem;
  readonly verdict?: Verdict;
  readonly isIdle?: boolean;
  /** Whether it holds only by stated values. */
  readonly byStated?: boolean;
  readonly why?: string;
  /** The title of its sheet, where the checks stand by sheets. */
  readonly heading: string | undefined;
  /** How its description stands, line below line; a check without one is called by its symbol. */
  readonly described: readonly string[];
  /** How many rows of the drawing it takes. */
  readonly lines: number;
}

/** The checks as they follow one another in the book, or those nearest to their limit first. */
export type CheckOrder = 'book' | 'nearest';

/**
 * An overview of all checks of a book, sheet by sheet or the nearest to its limit first: for each a bar of demand over capacity with the line at 100 %,
 * and the verdict in words. What fails is hatched and has a cross, what holds is filled, and only outlined with a sign beside
 * it where it rests on values beyond their permitted ranges, or holds only by stated ones. Each has its id as `data-check`. Many checks take several
 * drawings one below the other, each of which fits on a printed page.
 * `page`: how wide a page it is for; its letters stay as large on a narrow one.
 */
export function drawUtilisations(
  notebook: Notebook,
  page: 'wide' | 'narrow' = 'wide',
  order: CheckOrder = 'book',
): readonly Drawing[] {
  const titles = new Map(notebook.book.sheets.map((sheet) => [sheet.key, sheet.title]));
  const isNearest = order === 'nearest';
  const inBook = [...notebook.model.items.values()].flatMap((item) =>
    item.kind === 'formula' && item.row.kind === 'check' ? [item] : [],
  );
  const found = inBook.map((item) =>
    checkedOf(notebook, item, titles.get(item.sheet) ?? item.sheet, isNearest, columnsOf[page].left - 34),
  );
  const checks = isNearest ? found.toSorted((a, b) => byNearness(a.verdict, b.verdict)) : found;
  const parts = utilisationParts(checks);
  if (parts.length === 0)
    return [frame(ID, TITLE, [], columnsOf[page], titles, { y: 46, body: [noChecks()] })];
  return parts.map((part, at) => {
    const id = at === 0 ? ID : `${ID}-${at + 1}`;
    const title = parts.length === 1 ? TITLE : `${TITLE}, part ${at + 1} of ${parts.length}`;
    const hatches = createHatches(id);
    const drawn = drawRows(part, columnsOf[page], hatches.fill('fails'));
    return frame(id, title, part.checks, columnsOf[page], titles, {
      ...drawn,
      definitions: hatches.definitions(),
    });
  });
}

const TITLE = 'Utilisation of all checks';

function noChecks(): Markup {
  return textElement(text('This book has no checks yet.'), { x: 8, y: 34 }, { class: 'note' });
}

/** The titles of sheets by their keys. */
type Titles = ReadonlyMap<string, string>;

/** What stands in a drawing, and where it ends. */
interface Drawn {
  readonly y: number;
  readonly body: readonly Markup[];
  readonly definitions?: Markup;
}

function drawRows({ checks, continues }: UtilisationPart<Checked>, columns: Columns, hatch: string): Drawn {
  const body: Markup[] = [];
  let y = 34;
  let heading: string | undefined;
  for (const check of checks) {
    if (check.heading !== undefined && check.heading !== heading) {
      const words = `${check.heading}${continues && heading === undefined ? ', continued' : ''}`;
      heading = check.heading;
      y += body.length === 0 ? 0 : 8;
      body.push(textElement(strong(words), { x: 8, y: y + 13 }, { class: 'halo' }));
      y += ROW + 2;
    }
    body.push(row(check, y, columns, hatch));
    y += heightOf(check);
  }
  const head = textElement(text('100 %'), { x: columns.full, y: 18, anchor: 'middle' });
  body.push(head, line({ x: columns.full, y: 24 }, { x: columns.full, y: y + 4 }, { class: 'limit' }));
  const notes = [
    ...(checks.some(({ verdict }) => verdict?.outOfRange)
      ? ['rests on values beyond their permitted ranges']
      : []),
    ...(checks.some(({ byStated }) => byStated) ? ['holds only by stated values'] : []),
  ];
  if (notes.length > 0) {
    y += 26;
    body.push(
      warningSign(14, y - 4),
      textElement(text(notes.join(', or ')), { x: 24, y }, { class: 'note' }),
    );
  }
  return { y: y + 12, body };
}

function frame(
  id: string,
  title: string,
  checks: readonly Checked[],
  { width }: Columns,
  titles: Titles,
  { y, body, definitions }: Drawn,
): Drawing {
  const description = described(checks);
  const sketch = { width, height: y, body: together(...body), ...(definitions && { definitions }) };
  return {
    svg: frameSketch(id, title, description, sketch),
    title,
    description,
    table: {
      head: ['sheet', 'check', 'utilisation', 'verdict'],
      rows: checks.map((check) => [
        titles.get(check.item.sheet) ?? check.item.sheet,
        nameOf(check),
        percentOf(check),
        standingOf(check),
      ]),
    },
  };
}

function checkedOf(
  notebook: Notebook,
  item: FormulaItem,
  sheet: string,
  isNearest: boolean,
  width: number,
): Checked {
  const label = item.row.label ?? '';
  // Away from the others of its sheet a check says which one it is of.
  const isNamed = isNearest && notebook.book.sheets.length > 1;
  const name = label === '' ? item.row.name : label;
  const described = label === '' && !isNamed ? [] : wrapped(isNamed ? `${name} (${sheet})` : name, width);
  const more = Math.max(described.length - 1, 0);
  const drawn = { item, heading: isNearest ? undefined : sheet, described, lines: 1 + (more * LINE) / ROW };
  const verdict = notebook.verdict(item.id);
  if (verdict) return { ...drawn, verdict, byStated: holdsByStated(notebook, item.id) };
  const result = notebook.result(item.id);
  const why = 'problem' in result ? result.problem.message : 'blank';
  return { ...drawn, why, isIdle: result.status === 'inapplicable' };
}

function heightOf({ lines }: Checked): number {
  return ROW * lines;
}

function nameOf({ item }: Checked): string {
  return item.row.label === undefined || item.row.label === '' ? item.row.name : item.row.label;
}

function percentOf({ verdict }: Checked): string {
  const share = verdict && shareOf(verdict);
  return share === undefined ? '' : writeUtilisation(share, verdict?.holds === true);
}

function standingOf({ verdict, isIdle, byStated }: Checked): string {
  if (!verdict) return isIdle ? 'does not apply' : 'no value';
  return `${verdictWord(verdict)}${byStated ? ', only by stated values' : ''}`;
}

function row(check: Checked, y: number, columns: Columns, hatch: string): Markup {
  const base = y + BAR + 0.5;
  const name: readonly Words[] =
    check.described.length === 0 ? [symbol(check.item.row.name)] : check.described.map(text);
  const percent = percentOf(check);
  const { holds, outOfRange } = check.verdict ?? {};
  const isToKnow = outOfRange !== undefined || check.byStated === true;
  const tone = !check.verdict ? 'soft' : !holds ? 'bad-text' : isToKnow ? 'warn-text' : 'good-text';
  const word = check.isIdle
    ? text('n/a')
    : !check.verdict
      ? text('no value')
      : holds
        ? text('holds')
        : strong('fails');
  const parts = [
    // Takes the pointer between words and bar too.
    box({ x: 8, y: y - 2 }, { x: columns.width - 8, y: y + heightOf(check) - 2 }, { class: 'hit' }),
    ...name.map((words, at) => textElement(words, { x: 20, y: base + at * LINE })),
    bar(check, y + 2, columns, hatch),
    textElement(text(percent), { x: columns.width - VERDICT - 6, y: base, anchor: 'end' }, { class: 'halo' }),
    textElement(word, { x: columns.width - VERDICT, y: base }, { class: tone }),
    ...(isToKnow ? [warningSign(columns.width - VERDICT + wordsWidth(word) + 9, base - 4)] : []),
  ];
  return tag('g', { 'data-check': check.item.id }, parts);
}

/** The bar of a check from zero; beyond the field it is cut by two strokes. */
function bar(
  { verdict, byStated }: Checked,
  y: number,
  { left, full, right }: Columns,
  hatch: string,
): Markup {
  const use = verdict && shareOf(verdict);
  if (!verdict) return line({ x: left, y: y + BAR / 2 }, { x: right, y: y + BAR / 2 }, { class: 'idle' });
  if (use === undefined)
    return verdict.holds ? tickMark(left + 6, y + BAR / 2) : crossMark(left + 6, y + BAR / 2);
  const end = Math.min(right, left + (full - left) * Math.max(0, use));
  const from = { x: left, y };
  const to = { x: end, y: y + BAR };
  const cut =
    use * (full - left) > right - left
      ? path(`M${right - 12} ${y + BAR + 2}l5 -15M${right - 7} ${y + BAR + 2}l5 -15`, { class: 'thin' })
      : none;
  const filled = verdict.holds
    ? box(from, to, { class: verdict.outOfRange || byStated ? 'beyond-bar' : 'holds-bar', 'data-use': use })
    : box(from, to, { class: 'fails-edge', fill: hatch, 'data-use': use });
  return together(box({ x: left, y }, { x: full, y: y + BAR }, { class: 'track' }), filled, cut);
}

function tickMark(x: number, y: number): Markup {
  return path(`M${x - 4} ${y}l3.5 3.5l6 -7`, { class: 'outline' });
}

/** The sign that something is to be known of a value: a triangle with a mark in it. */
function warningSign(x: number, y: number): Markup {
  return path(`M${x} ${y - 5.5}l5.5 10h-11ZM${x} ${y - 2}v3M${x} ${y + 2.4}v.4`, { class: 'warn-edge' });
}

function crossMark(x: number, y: number): Markup {
  return path(`M${x - 4} ${y - 4}l8 8M${x - 4} ${y + 4}l8 -8`, { class: 'fails-edge' });
}

function described(checks: readonly Checked[]): string {
  const failing = checks.filter(({ verdict }) => verdict?.holds === false);
  const idle = checks.filter(({ isIdle }) => isIdle);
  const blank = checks.filter(({ verdict, isIdle }) => !verdict && !isIdle);
  const beyond = checks.filter(({ verdict }) => verdict?.holds && verdict.outOfRange);
  const byStated = checks.filter((check) => check.byStated && !check.verdict?.outOfRange);
  const holding =
    checks.length - failing.length - blank.length - idle.length - beyond.length - byStated.length;
  if (checks.length === 0) return 'This book has no checks yet.';
  const worst = failing.map((check) => `${nameOf(check)} ${percentOf(check)}`.trim());
  return [
    `${checks.length} ${checks.length === 1 ? 'check' : 'checks'}: ${holding} hold, ${beyond.length === 0 ? '' : `${beyond.length} hold beyond a permitted range, `}${byStated.length === 0 ? '' : `${byStated.length} hold only by stated values, `}${failing.length} fail, ${blank.length} without a value${idle.length === 0 ? '' : `, ${idle.length} not applicable`}.`,
    worst.length > 0 ? `Fails: ${worst.join('; ')}.` : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
