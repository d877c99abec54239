import { type Content, element, none } from '../../markup/index.ts';
import type { Checked } from '../../review/index.ts';
import { checkedWords } from '../checked-lines.ts';
import type { RecordSource } from './source.ts';

/** So many cells of a column that were checked are told beside it; the list of all stands under “Checking by hand”. */
const MOST_CELLS = 20;

/** What the checker said of a line or column, and what of it is not as it came. */
export function besideLine({ notebook, checking, otherwise }: RecordSource, id: string): Content {
  const other = otherwise.get(id);
  const checked = checking.all.filter(({ item, hand, seen }) => item.id === id && (hand ?? seen));
  const more = checked.length - MOST_CELLS;
  return [
    other === undefined ? none : element('p', { class: 'otherwise' }, `≠ not as it came: ${other}`),
    checked
      .slice(0, MOST_CELLS)
      .map((one) => element('p', { class: kindOf(one) }, `${rowOf(one)}${checkedWords(notebook, one)}`)),
    more > 0 ? element('p', { class: 'quiet' }, `and ${more} more cells, under “Checking by hand”`) : none,
  ];
}

const rowOf = ({ row }: Checked): string => (row === undefined ? '' : `row ${row + 1} `);

function kindOf({ state }: Checked): string {
  if (state === 'agrees' || state === 'seen') return 'checked holds';
  return state === 'differs' ? 'checked fails' : 'checked remark';
}
