import type { Column, Fresh, Part, Prose, Row, Rows, Table } from '../../../document/index.ts';

/** What a person can put into a sheet. */
export type NewKind = Row['kind'] | 'text' | 'heading' | 'caution' | 'assumption' | 'block' | 'table';

/** A blank line. */
export function newRow(kind: Row['kind'], fresh: Fresh): Row {
  const id = fresh.id('r');
  switch (kind) {
    case 'given':
      return { id, kind, name: fresh.name('x_1'), entry: '', unit: '' };
    case 'calc':
      return { id, kind, name: fresh.name('y_1'), formula: '', unit: '' };
    case 'check':
      return { id, kind, name: fresh.name('c_1'), formula: '' };
    case 'choice':
      return {
        id,
        kind,
        name: fresh.name('option_1'),
        entry: 'yes',
        options: [{ value: 'yes' }, { value: 'no' }],
      };
  }
}

const roles = { text: 'text', heading: 'heading', caution: 'caution', assumption: 'assumption' } as const;

/** A blank part: prose, a block with one given, or a table of two columns and three rows. */
export function newPart(kind: Exclude<NewKind, Row['kind']>, fresh: Fresh): Part {
  if (kind === 'block') return newBlock([newRow('given', fresh)], fresh);
  if (kind === 'table') return newTable(fresh);
  const prose: Prose = { id: fresh.id('p'), kind: 'prose', role: roles[kind], text: '' };
  return prose;
}

/** A block around rows. */
export function newBlock(rows: readonly Row[], fresh: Fresh): Rows {
  return { id: fresh.id('p'), kind: 'rows', rows };
}

function newTable(fresh: Fresh): Table {
  const column = (type: 'text' | 'number', name: string, label: string): Column => ({
    id: fresh.id('k'),
    kind: 'given',
    name: fresh.name(name),
    label,
    type,
    ...(type === 'text' ? { optional: true } : { unit: '-' }),
    chunks: [[null, null, null]],
  });
  return {
    id: fresh.id('p'),
    kind: 'table',
    name: fresh.name('table_1'),
    title: 'Table',
    length: 3,
    columns: [column('text', 'item', 'item'), column('number', 'quantity', 'quantity')],
  };
}

/** The same line under an id and a name of its own. */
export function copyOfRow(row: Row, fresh: Fresh): Row {
  return { ...row, id: fresh.id('r'), name: fresh.name(row.name) };
}

/** The same part, with ids and names of its own. */
export function copyOfPart(part: Part, fresh: Fresh): Part {
  const id = fresh.id('p');
  if (part.kind === 'rows') return { ...part, id, rows: part.rows.map((row) => copyOfRow(row, fresh)) };
  if (part.kind !== 'table') return { ...part, id };
  return {
    ...part,
    id,
    name: fresh.name(part.name),
    columns: part.columns.map((one) => ({ ...one, id: fresh.id('k'), name: fresh.name(one.name) })),
  };
}
