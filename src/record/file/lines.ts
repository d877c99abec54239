import type { Column, Range, Row } from '../../document/index.ts';
import { type Content, element, none } from '../../markup/index.ts';
import {
  brokenLink,
  type FormulaItem,
  type Item,
  linkSource,
  type Result,
  shareOf,
  statedIn,
  type Value,
  verdictWord,
  writeUtilisation,
} from '../../notebook/index.ts';
import { unitInPrint } from '../../units/index.ts';
import { appliesInWords } from '../lines/applies-in-words.ts';
import { methodsShown } from '../lines/methods-shown.ts';
import { sourceOfLine } from '../lines/source-of-line.ts';
import { typesetFormula } from '../math/formula-set.ts';
import { isSideWorked } from '../numbers/has-numbers.ts';
import { lineNumbers, rowNumbers } from '../numbers/numbers-put-in.ts';
import { choiceWords } from '../values/choice-words.ts';
import { columnSummed } from '../values/column-summed.ts';
import { comparedSides } from '../values/compared-sides.ts';
import { entryView } from '../values/entry-view.ts';
import { formatQuantity, quantityText } from '../values/format-quantity.ts';
import { numberOfLine } from '../values/like-lines.ts';
import { idInWords, problemInWords } from '../values/persons-words.ts';
import { printedRowsWords } from '../values/printed-rows.ts';
import { statedWords, whyNotComputed } from '../values/stated-words.ts';
import { besideLine } from './beside-line.ts';
import {
  FORMULA_WIDTH,
  formulaLines,
  numbersPutIn,
  rowNumbersPutIn,
  symbol,
  writtenFormula,
} from './formulas.ts';
import { idOfLine, type RecordSource, titleOfSheet } from './source.ts';
import type { Head, TableRow } from './tables.ts';

/** The heads of a table of lines. */
export const lineHeads: readonly Head[] = [
  { head: 'Symbol', class: 'name' },
  { head: 'Description and calculation' },
  { head: 'Result', class: 'number' },
  { head: 'Reference' },
];

/** A line with a formula. */
type Computed = Extract<Item, { checked: unknown }>;

/** A line of a sheet: what it is called, how it is computed with the numbers put in, what it comes to, and by which source. */
export function lineRow(source: RecordSource, sheet: string, row: Row): TableRow {
  const { notebook } = source;
  const id = `${sheet}.${row.name}`;
  const item = notebook.model.items.get(id);
  const result = item?.kind === 'input' || item?.kind === 'formula' ? notebook.result(id) : undefined;
  const described = [
    about(row.label, 'range' in row ? row.range : undefined),
    item && 'checked' in item ? calculation(source, item, result) : entered(source, row, result),
    item ? told(source, item, result) : none,
    besideLine(source, id),
    row.note ? element('p', { class: 'quiet' }, row.note) : none,
  ];
  return {
    id: idOfLine(id),
    class: row.kind,
    cells: [
      symbol(row.name),
      described,
      resultWords(source, row, item, result),
      reference(source, row, item),
    ],
  };
}

/** A column of a table as a line of its own: its formula with the numbers of the row that governs put in. */
export function columnRow(source: RecordSource, table: string, column: Column): TableRow {
  const { notebook } = source;
  const id = `${table}.${column.name}`;
  const item = notebook.model.items.get(id);
  const unit = notebook.unitOf(id).text;
  const computed = item?.kind === 'formula column' ? item : undefined;
  const put = computed && rowNumbers(source, computed, undefined, FORMULA_WIDTH);
  const described = [
    about(column.label, 'range' in column ? column.range : undefined, computed ? '' : 'entered row by row'),
    computed ? formulasOf(source, computed) : none,
    put ? rowNumbersPutIn(put) : none,
    besideLine(source, id),
    column.note ? element('p', { class: 'quiet' }, column.note) : none,
  ];
  return {
    id: idOfLine(id),
    class: column.kind,
    cells: [
      symbol(column.name),
      described,
      unit === '-' || unit === 'date' ? '' : `in ${unitInPrint(unit)}`.replace(/^in $/, ''),
      reference(source, column, item),
    ],
  };
}

/** What a line or column is, and what may stand there. */
function about(label: string | undefined, range: Range | undefined, ...more: readonly string[]): Content {
  const { min, max } = range ?? {};
  const permitted = [
    ...(min === undefined ? [] : [`from ${min}`]),
    ...(max === undefined ? [] : [`up to ${max}`]),
  ];
  const said = [...more, permitted.length === 0 ? '' : `permitted ${permitted.join(' ')}`].filter(
    (one) => one !== '',
  );
  if (!label && said.length === 0) return none;
  const behind = said.length === 0 ? none : element('span', {}, ` (${said.join('; ')})`);
  return element('p', { class: 'described' }, element('span', {}, label ?? ''), behind);
}

/** The entry as it was typed, where its value stands in other words. */
function entered({ notebook, units }: RecordSource, row: Row, result: Result | undefined): Content {
  if (row.kind !== 'given' || result?.status === 'missing' || result === undefined) return none;
  if (result.status === 'ok' && result.value.kind !== 'number') return none;
  const view =
    result.status === 'ok' && result.value.kind === 'number'
      ? entryView(row, result.value, units, notebook.model.registry)
      : undefined;
  if (view?.kind === 'plain') return none;
  return element('p', { class: 'entered' }, `entered as ${view ? view.entry : `“${row.entry}”`}`);
}

function calculation(source: RecordSource, item: Computed, result: Result | undefined): Content {
  const { notebook } = source;
  const linked = linkSource(item, notebook.model.items);
  if (linked) {
    const where = linked.sheet === item.sheet ? '' : ` on “${titleOfSheet(source.book, linked.sheet)}”`;
    return element('p', {}, 'from ', symbol(linked.id.slice(linked.sheet.length + 1)), where);
  }
  if (item.kind !== 'formula') return formulasOf(source, item);
  const checked = methodsShown(notebook, item)[0]?.item.checked ?? (item.methods ? undefined : item.checked);
  const isCheck = item.row.kind === 'check';
  const works =
    result?.status === 'ok' && (!isCheck || (checked?.syntax.kind === 'comparison' && isSideWorked(item)));
  const put = checked && works ? lineNumbers(source, item, checked, FORMULA_WIDTH) : undefined;
  const sides = isCheck ? comparedSides(notebook, item, source.units) : undefined;
  return [
    formulasOf(source, item),
    put ? numbersPutIn(put) : none,
    sides ? element('p', { class: 'compared' }, `${sides.left} ${sides.sign} ${sides.right}`) : none,
  ];
}

/** The formula of a line or column, or those of its methods that are in force, each with what it is for and its reference. */
function formulasOf({ notebook }: RecordSource, item: Computed): Content {
  const drawn = (checked: Computed['checked']): Content => {
    if (checked.text.trim() === '') return element('p', { class: 'quiet' }, 'no formula yet');
    if (!checked.whole) return writtenFormula(checked.text);
    return formulaLines(typesetFormula(checked, FORMULA_WIDTH), 'symbols', checked.text.trim());
  };
  if (!item.methods) return drawn(item.checked);
  const shown = methodsShown(notebook, item);
  if (shown.length === 0) return element('p', {}, 'no method is in force');
  return shown.map(({ item: { checked, method }, words }) => {
    // That of a line stands in its own column.
    const cited = item.kind === 'formula column' ? (method.reference ?? '') : '';
    return [
      drawn(checked),
      element('p', { class: 'quiet' }, `method: ${[words, cited].filter((one) => one !== '').join('; ')}`),
    ];
  });
}

/** What there is to know of a line beside its value: why it has none, on what it rests, what is stated, how it adds up. */
function told(source: RecordSource, item: Item, result: Result | undefined): Content {
  const { notebook, units } = source;
  const sentence = (found: Parameters<typeof problemInWords>[0], kind: string): Content => {
    const { message, hints } = problemInWords(found, notebook, item.sheet);
    return element('p', { class: kind }, [message, ...hints].join('; '));
  };
  const verdict = item.kind === 'formula' ? notebook.verdict(item.id) : undefined;
  const eased = item.kind === 'formula' ? notebook.easedBy(item.id) : undefined;
  const column = columnSummed(item);
  const sum = result?.status === 'ok' && result.value.kind === 'number' ? result.value : undefined;
  const rounded = column === undefined || !sum ? undefined : printedRowsWords(notebook, column, units, sum);
  return [
    result?.status === 'inapplicable' && item.kind === 'formula' ? condition(source, item) : none,
    result?.status === 'problem' ? sentence(result.problem, 'problem') : none,
    result?.status === 'waiting' ? sentence(result.problem, 'quiet') : none,
    item.problems.filter(({ severity }) => severity === 'warning').map((one) => sentence(one, 'remark')),
    verdict?.outOfRange ? sentence(verdict.outOfRange, 'remark') : none,
    eased ? sentence(eased, 'remark') : none,
    rounded === undefined ? none : element('p', { class: 'quiet' }, rounded),
    item.kind === 'formula' ? statedOf(source, item) : none,
  ];
}

/** That a check does not apply, with the condition that is not met. */
function condition({ notebook }: RecordSource, item: FormulaItem): Content {
  const applies = appliesInWords(notebook, item);
  return [
    element('p', {}, 'does not apply, for this is not so:'),
    applies?.whole
      ? formulaLines(typesetFormula(applies, FORMULA_WIDTH), 'symbols', applies.text.trim())
      : writtenFormula(applies?.text ?? ''),
  ];
}

function statedOf({ notebook, units }: RecordSource, item: FormulaItem): Content {
  return statedIn(notebook, item).map((one) => {
    const { stated, typed, computed, difference } = statedWords(notebook, one, units);
    const why = whyNotComputed(notebook, one, item.sheet);
    const words = [
      `${one.side ? `${one.side} ` : ''}stated ${stated}${typed === undefined ? '' : ` (as typed: ${typed})`}`,
      `computed ${computed}${why === undefined ? '' : `: ${why}`}`,
      ...(difference === undefined ? [] : [`difference ${difference}`]),
    ];
    return element('p', { class: 'stated' }, words.join('; '));
  });
}

function resultWords(
  source: RecordSource,
  row: Row,
  item: Item | undefined,
  result: Result | undefined,
): Content {
  if (result === undefined) return '';
  if (result.status === 'missing') {
    const optional = 'optional' in row && row.optional === true;
    return row.kind === 'given' || row.kind === 'choice' ? (optional ? 'blank' : 'to be entered') : '–';
  }
  if (result.status === 'inapplicable') return 'does not apply';
  if (result.status !== 'ok') return 'no value';
  if (row.kind === 'check' && item?.kind === 'formula') return verdictWords(source, item, result.value);
  if (row.kind === 'choice') return choiceWords(row);
  const words = valueWords(source, item, result.value);
  const isStated = item?.kind === 'formula' && item.stated !== undefined;
  const isEntry = row.kind === 'given' || isStated;
  return element('span', { class: isEntry ? 'entry' : 'value' }, isStated ? `stated ${words}` : words);
}

function verdictWords({ notebook }: RecordSource, item: FormulaItem, value: Value): Content {
  const verdict = notebook.verdict(item.id);
  if (!verdict) return value.kind === 'truth' ? `${value.truth}` : '';
  const share = shareOf(verdict);
  const word = element('b', { class: verdict.holds ? 'holds' : 'fails' }, verdictWord(verdict));
  return share === undefined ? word : [`${writeUtilisation(share, verdict.holds)} `, word];
}

function valueWords({ notebook, units }: RecordSource, item: Item | undefined, value: Value): string {
  if (value.kind === 'text') return value.text;
  if (value.kind === 'truth') return value.truth ? 'true' : 'false';
  const among = item && numberOfLine(notebook, item, units);
  return quantityText(among ?? formatQuantity(value.si, value.unit, units, notebook.model.registry));
}

/** The source of a line; in front of it that it is to be linked, that its link is broken, and why a value is stated. */
function reference(source: RecordSource, line: Row | Column, item: Item | undefined): Content {
  const { notebook } = source;
  const own = sourceOfLine(notebook, line, item);
  const toLink = 'toLink' in line ? line.toLink : undefined;
  const broken = item && brokenLink(item, notebook.model.items);
  const stated = item?.kind === 'formula' ? statedIn(notebook, item) : [];
  return [
    toLink === undefined ? none : element('p', { class: 'remark' }, `to be linked: ${toLink}`),
    broken === undefined
      ? none
      : element('p', { class: 'problem' }, `link broken: ${idInWords(broken, notebook, item?.sheet ?? '')}`),
    stated.map(({ side, statement }) => {
      const { reason, reasonFor } = statement;
      const why = reason.trim() === '' ? ', reason open' : `: ${reason.trim()}`;
      const open = reasonFor === undefined ? '' : `, given for ${reasonFor}, to be confirmed`;
      return element('p', { class: 'stated' }, `${side ? `${side} ` : ''}stated${why}${open}`);
    }),
    own === '' ? none : element('p', {}, stated.length === 0 ? own : `formula: ${own}`),
  ];
}
