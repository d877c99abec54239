import { aboutOf, type Part, type Prose, type Rows, type Sheet } from '../../document/index.ts';
import { drawChart, drawFigure } from '../../figures/index.ts';
import { type Content, element, type Markup, none } from '../../markup/index.ts';
import { problemInWords } from '../values/persons-words.ts';
import { lineHeads, lineRow } from './lines.ts';
import { idOfSheet, type RecordSource, titleOfSheet } from './source.ts';
import { tablePart } from './table-part.ts';
import { paragraphs, table } from './tables.ts';

/** The words in front of prose of each role. */
const roleWords: Readonly<Record<Prose['role'], string>> = {
  text: '',
  heading: '',
  caution: 'Caution',
  assumption: 'Assumption',
  'open item': 'Open item',
  source: 'Source',
};

/** A sheet with all its parts, on pages of its own. */
export function sheetSection(source: RecordSource, sheet: Sheet, page: string): Markup {
  const { book } = source;
  const cautions = aboutOf(book, sheet.key)?.cautions ?? [];
  return element(
    'section',
    { id: idOfSheet(sheet.key), class: `sheet ${page}` },
    element('h2', {}, titleOfSheet(book, sheet.key)),
    cautions.length === 0 ? none : cautionsLine(cautions.length),
    sheet.parts.map((part) => partOf(source, sheet, part)),
  );
}

/** Cautions stand once for all sheets; each sheet says that there are some. */
function cautionsLine(count: number): Markup {
  const words = count === 1 ? 'a caution that holds' : `${count} cautions that hold`;
  return element(
    'p',
    { class: 'quiet' },
    `See ${words} for this sheet under `,
    element('a', { href: '#about' }, 'What it is about'),
    '.',
  );
}

function partOf(source: RecordSource, sheet: Sheet, part: Part): Content {
  switch (part.kind) {
    case 'prose':
      return prose(part);
    case 'rows':
      return rows(source, sheet, part);
    case 'table':
      return tablePart(source, sheet, part);
    case 'figure':
    case 'chart':
      return picture(source, sheet, part);
  }
}

function prose({ role, text }: Prose): Content {
  if (text.trim() === '') return none;
  if (role === 'heading') return element('h3', {}, text);
  const label = roleWords[role];
  return element(
    'div',
    { class: `prose ${role.replace(' ', '-')}` },
    label === '' ? none : element('b', {}, `${label}: `),
    paragraphs(text),
  );
}

function rows(source: RecordSource, sheet: Sheet, part: Rows): Content {
  const title = part.title?.trim() || `Lines of ${titleOfSheet(source.book, sheet.key)}`;
  if (part.rows.length === 0) return none;
  return table(
    title,
    lineHeads,
    part.rows.map((row) => lineRow(source, sheet.key, row)),
    { class: part.title?.trim() ? 'lines' : 'lines untitled' },
  );
}

/** A sketch or chart, and the same as a table for those who do not see it. */
function picture(
  { notebook, units }: RecordSource,
  { key }: Sheet,
  part: Extract<Part, { kind: 'figure' | 'chart' }>,
): Content {
  const title = part.title?.trim() ? element('h3', {}, part.title) : none;
  const drawn =
    part.kind === 'figure' ? drawFigure(notebook, key, part, units) : drawChart(notebook, key, part, units);
  if (!drawn.ok)
    return [
      title,
      drawn.problems.map((one) =>
        element('p', { class: 'quiet' }, `not drawn: ${problemInWords(one, notebook, key).message}`),
      ),
    ];
  const { svg, description } = drawn.value;
  return element('div', { class: 'picture' }, title, svg, element('p', { class: 'plain' }, description));
}
