import { drawFigure, figureCss } from '../../figures/index.ts';
import { writeMarkup } from '../../markup/index.ts';
import { openNotebook } from '../../notebook/index.ts';
import { templateBook } from '../books.ts';
import { pageColours } from '../page-colours.ts';
import { Refused } from '../refused.ts';

/** What nobody could read at the size of a picture in a list. */
const small =
  ['text', '.leader', '.dim', '.dim-out', '.dim-tick'].map((part) => `.quay-figure ${part}`).join(', ') +
  ' { display: none; }';

/** The first sketch of a template as an SVG file of its own, small: without words and dimension lines. */
export function templatePicture(id: string): string {
  const book = templateBook(id);
  const notebook = openNotebook(book);
  const [first] = book.sheets.flatMap(({ key, parts }) =>
    parts.flatMap((part) => (part.kind === 'figure' ? [{ key, part }] : [])),
  );
  if (!first) throw new Refused(`the template ${id} has no sketch`);
  const drawn = drawFigure(notebook, first.key, first.part);
  if (!drawn.ok) throw new Refused(`the sketch of the template ${id}: ${drawn.problems[0]?.message}`);
  const svg = writeMarkup(drawn.value.svg);
  const end = svg.indexOf('>') + 1;
  return `${svg.slice(0, end)}<style>${pageColours()}${figureCss}${small}</style>${svg.slice(end)}\n`;
}
