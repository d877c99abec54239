import {
  type Book,
  blankBook,
  type Calc,
  type CalcColumn,
  type Cell,
  type Check,
  type Choice,
  chunksOfCells,
  type Given,
  type GivenColumn,
  type Option,
  type Part,
  type Row,
  type Rows,
  type Table,
} from '../src/document/index.ts';

/** How a line or column is computed, and what else is said of it. */
type Computing = Omit<Calc, 'id' | 'kind' | 'name' | 'stated'>;

/** A book of these sheets, each its key and its parts. */
export function bookOf(sheets: Readonly<Record<string, readonly Part[]>>): Book {
  const all = Object.entries(sheets).map(([key, parts]) => ({ key, title: '', parts }));
  return { ...blankBook(), sheets: all };
}

/** A block of lines. */
export function blockOf(id: string, ...rows: readonly Row[]): Rows {
  return { id, kind: 'rows', rows };
}

/** A table whose id is its name, of so many rows. */
export function tableOf(name: string, length: number, ...columns: Table['columns']): Table {
  return { id: name, kind: 'table', name, length, columns };
}

/** A given line; like all that follow, its id is its name. */
export function given(name: string, entry: string, unit?: string): Given {
  return { id: name, kind: 'given', name, entry, ...(unit !== undefined && { unit }) };
}

/** A choice among options, of which the first is chosen. */
export function choice(name: string, ...options: readonly (string | Option)[]): Choice {
  const all = options.map((one) => (typeof one === 'string' ? { value: one } : one));
  return { id: name, kind: 'choice', name, entry: all[0]?.value ?? '', options: all };
}

/** A calculated line. */
export function calc(name: string, computing: Computing | string): Calc {
  return {
    id: name,
    kind: 'calc',
    name,
    ...(typeof computing === 'string' ? { formula: computing } : computing),
  };
}

/** A calculated column. */
export function calcColumn(name: string, computing: Computing | string): CalcColumn {
  return {
    id: name,
    kind: 'calc',
    name,
    ...(typeof computing === 'string' ? { formula: computing } : computing),
  };
}

/** A column of numbers. */
export function numbers(name: string, unit: string | undefined, cells: readonly Cell[]): GivenColumn {
  return { id: name, kind: 'given', name, ...(unit !== undefined && { unit }), chunks: chunksOfCells(cells) };
}

/** A column of texts. */
export function texts(name: string, cells: readonly Cell[], options?: readonly string[]): GivenColumn {
  return {
    id: name,
    kind: 'given',
    name,
    type: 'text',
    ...(options && { options }),
    chunks: chunksOfCells(cells),
  };
}

/** A check. */
export function check(name: string, formula: string): Check {
  return { id: name, kind: 'check', name, formula };
}
