import {
  type Book,
  type CalcPlace,
  type Cases,
  type Edit,
  findColumn,
  findRow,
  findSheet,
  findTable,
  setColumnField,
  setFormula,
  setMethodField,
} from '../../document/index.ts';
import type { FormulaColumnItem, FormulaItem, Notebook } from '../../notebook/index.ts';
import { type Computation, computationsOf } from './computations.ts';
import { judge } from './judge.ts';
import { prepareCase } from './prepare-case.ts';

/**
 * What makes a wrong formula of a right one: a number one percent larger, a point moved, a truth turned. A method that is
 * nothing but zero becomes one of the line's unit, for no part of it is another number.
 */
function spoiled(item: FormulaItem | FormulaColumnItem, formula: string, isZero = false): string {
  const { type, unit } = item;
  if (isZero) return `1 ${unit && unit.text !== '-' ? unit.text : ''}`;
  switch (type.kind) {
    case 'number':
      return `(${formula}) * 1.01`;
    case 'point':
      return `(${formula}) + 0.1 ${type.of === 'temperature' ? 'K' : type.of === 'date' ? 'd' : 'm'}`;
    case 'truth':
      return `NOT(${formula})`;
    case 'text':
      return `(${formula}) & "?"`;
    case 'unknown':
      throw new Error(`${item.id} has no type`);
  }
}

/**
 * Spoils each calculated line and column in turn, of one with methods each method, and names those no case notices. Checks are left out:
 * their two sides are lines or columns of their own, or expected as utilisation.
 */
export function unnoticed(book: Book, cases: Cases): readonly string[] {
  const prepared = cases.cases.map((example) => {
    const notebook = prepareCase(book, example);
    if (!notebook.ok) throw new Error(`the case ${example.id} cannot be entered`);
    return { notebook: notebook.value, example };
  });
  const [first] = prepared;
  if (!first) return [];
  const unseen = computationsOf(first.notebook).filter((computation) => {
    const { id } = computation;
    const item = first.notebook.model.items.get(id);
    if (item?.kind === 'formula' ? item.row.kind !== 'calc' : item?.kind !== 'formula column') return false;
    const expecting = (at: (typeof prepared)[number]): boolean =>
      at.example.expect.some((expected) => id === expected.name || id.endsWith(`.${expected.name}`));
    const ordered = [...prepared.filter(expecting), ...prepared.filter((at) => !expecting(at))];
    return !ordered.some(({ notebook, example }) => {
      const edit = spoil(notebook, computation);
      const applied = notebook.apply(edit);
      if (!applied.ok) throw new Error(`${id} cannot be spoiled: ${applied.problems[0]?.message}`);
      const noticed = example.expect.some((expected) => !judge(notebook, expected).agrees);
      notebook.apply(applied.value.inverse);
      return noticed;
    });
  });
  return unseen.map(({ name }) => name);
}

function spoil(notebook: Notebook, { id, method }: Computation): Edit {
  const item = notebook.model.items.get(id);
  const sheet = item && findSheet(notebook.book, item.sheet);
  if (sheet && item?.kind === 'formula') {
    const row = findRow(sheet, item.row.name);
    if (row && method === undefined) return setFormula(row.place, spoiled(item, item.formula));
    if (row) return spoilMethod(item, row.place, method ?? '');
  }
  if (sheet && item?.kind === 'formula column') {
    const table = findTable(sheet, item.table.slice(sheet.key.length + 1));
    const column = table && findColumn(table.table, item.column.name);
    const place = table && column && { ...table.place, column: column.id };
    if (place && method === undefined) return setColumnField(place, 'formula', spoiled(item, item.formula));
    if (place) return spoilMethod(item, place, method ?? '');
  }
  throw new Error(`there is no calculated line or column ${id}`);
}

function spoilMethod(item: FormulaItem | FormulaColumnItem, place: CalcPlace, id: string): Edit {
  const own = item.methods?.list.find(({ method }) => method.id === id);
  if (!own) throw new Error(`${item.id} has no method ${id}`);
  const { typed } = own.checked;
  const isZero = typed.kind === 'number' && typed.si === 0;
  return setMethodField(place, id, 'formula', spoiled(item, own.method.formula, isZero));
}
