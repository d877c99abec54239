import { type Item, type Notebook, shareOf, verdictWord, writeUtilisation } from '../../notebook/index.ts';
import { writeNumber } from '../../units/index.ts';
import { choiceWords } from './choice-words.ts';
import { formatQuantity, type PrintedQuantity } from './format-quantity.ts';
import { numberOfLine } from './like-lines.ts';
import { notYetWords } from './not-yet-words.ts';
import type { UnitsView } from './units-view.ts';

/** A line's value in a few words, number and unit apart: for lists beside the sheet. */
export function resultText(notebook: Notebook, item: Item, view: UnitsView): PrintedQuantity {
  if (item.kind === 'input column' || item.kind === 'formula column') {
    const whole = notebook.column(item.id);
    if (whole.status !== 'ok') return { number: withoutValue(notebook), unit: '' };
    return { number: writeNumber(whole.reading.length), unit: whole.reading.length === 1 ? 'row' : 'rows' };
  }
  const read = notebook.result(item.id);
  if (read.status === 'missing') return { number: '—', unit: '' };
  if (read.status === 'inapplicable') return { number: 'does not apply', unit: '' };
  if (read.status !== 'ok') return { number: withoutValue(notebook), unit: '' };
  const { value } = read;
  if (value.kind === 'number')
    return (
      numberOfLine(notebook, item, view) ??
      formatQuantity(value.si, value.unit, view, notebook.model.registry)
    );
  if (value.kind === 'text') {
    const chosen = item.kind === 'input' && item.row.kind === 'choice';
    return { number: chosen ? choiceWords(item.row) : value.text, unit: '' };
  }
  const verdict = notebook.verdict(item.id);
  if (!verdict) return { number: value.truth ? 'true' : 'false', unit: '' };
  const share = shareOf(verdict);
  const use = share === undefined ? '' : `${writeUtilisation(share, verdict.holds)} `;
  return { number: `${use}${verdictWord(verdict)}`, unit: '' };
}

/** What has no value may still come to one while work is left over. */
const withoutValue = ({ pending }: Notebook): string => notYetWords(pending) ?? 'no value';
