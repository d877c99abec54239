import { type Book, blankBook, type Row } from '../../src/document/index.ts';
import { functionTable } from '../../src/language/index.ts';
import type { Random } from './random.ts';
import { formulaWriter, type Kind, type Vocabulary } from './random-formula.ts';

/** A book of given values and random formulas over them, one for each function on lines, others as columns of a table. */
export function randomBook(random: Random): Book {
  const { pick, below, oneIn } = random;
  const entry = (unit: string, from: readonly number[]) => `${pick(from)}${unit === '' ? '' : ` ${unit}`}`;
  const signed = [0.35, -2.5, 7, 0, 1, 12.75, -0.004, 3, 100];
  const givens: readonly (readonly [name: string, entry: string, unit: string])[] = [
    ['p', entry('', signed), '-'],
    ['q', entry('', [0.2, 0.8, 1.5, 4]), '-'],
    ['n', entry('', [1, 2, 3, 4]), '-'],
    ['m', oneIn(2) ? '' : '0.7', '-'],
    ['L', entry(pick(['ft', 'm', 'in']), signed), 'ft'],
    ['B', `${1 + below(40)}'-${below(12)} 1/2"`, 'm'],
    ['A', entry(pick(['sf', 'm^2']), [2, 0.5, 120]), 'sf'],
    ['F', entry(pick(['kip', 'kN', 'tf']), signed), 'kip'],
    ['P', entry('kN', [3, 40.5, 812]), 'kN'],
    ['θ', entry(pick(['deg', 'rad']), [0.3, 1, 0, 1.5]), 'deg'],
    ['deck', `El. +${below(30)}.5 ft MLLW`, 'ft MLLW'],
    ['T', entry(pick(['degC', 'degF']), [20, 68, -4]), 'degC'],
    ['start', `2026-${10 + below(3)}-${10 + below(18)}`, 'date'],
    ['soil', pick(['clay', 'Sand', ' silt']), ''],
    ['wet', pick(['TRUE', 'FALSE']), ''],
    ['blank', '', 'm'],
  ];
  const rows: Row[] = givens.map(([name, typed, unit]) => ({
    id: `g-${name}`,
    kind: 'given',
    name,
    entry: typed,
    optional: true,
    ...(unit !== '' && { unit }),
  }));
  const layers = tableOf('t', 2 + below(4), random);
  const sites = tableOf('u', 6, random);
  const single: Vocabulary['single'] = {
    plain: ['p', 'q', 'n', 'm'],
    length: ['L', 'B'],
    area: ['A'],
    force: ['F', 'P'],
    angle: ['θ'],
    truth: ['wet'],
    text: ['soil'],
    date: ['start'],
    elevation: ['deck'],
    temperature: ['T'],
  };
  const columns = new Map([layers, sites].map(({ name, names }) => [name, names] as const));
  const words: Vocabulary = {
    single,
    columns,
    keys: [layers, sites].flatMap(({ name }) => [
      { table: name, column: 'key', kind: 'length' as const },
      { table: name, column: 'step', kind: 'plain' as const },
      { table: name, column: 'kind', kind: 'text' as const },
    ]),
    grid: { table: 'u', x: 'x', y: 'y' },
    blank: ['m', 'blank', 'L'],
    gappy: [layers, sites].flatMap(({ name }) => [
      { table: name, column: 'gap', kind: 'plain' as const },
      { table: name, column: 'late', kind: 'force' as const },
    ]),
  };
  const onLines = formulaWriter(words, random);
  const inTable = formulaWriter({ ...words, own: 't' }, random);
  const onlyRows = new Set(['ABOVE', 'ROW', 'RUNNINGSUM', 'RUNNINGMAX', 'RUNNINGMIN']);
  const usable = functionTable.filter(({ name }) => name !== 'SERIES');
  usable.forEach((fn, k) => {
    if (onlyRows.has(fn.name)) return;
    rows.push({ id: `c-${k}`, kind: 'calc', name: `c${k}`, formula: onLines.call(fn, 1 + below(3)) });
  });
  const own = Array.from({ length: 14 }, (_, k) => {
    const fn = k < 5 ? usable.filter(({ name }) => onlyRows.has(name))[k] : pick(usable);
    if (!fn) throw new Error('a function of rows is missing');
    const formula = inTable.call(fn, 1 + below(2));
    return { id: `k-${k}`, kind: 'calc' as const, name: `k${k}`, formula };
  });
  const steps = ['SERIES(0 m; B; 0.9 m)', 'SERIES(0; 3; n / 4)', 'SERIES(2; q; 0.5)'];
  const parts: Book['sheets'][number]['parts'] = [
    { id: 'rows', kind: 'rows', rows },
    { ...layers.part, columns: [...layers.part.columns, ...own] },
    sites.part,
    {
      id: 'series',
      kind: 'table',
      name: 'v',
      columns: [{ id: 'v-z', kind: 'series', name: 'z', formula: pick(steps) }],
    },
  ];
  return { ...blankBook(), sheets: [{ key: 's', title: '', parts }] };
}

function tableOf(name: string, length: number, { pick, below, oneIn }: Random) {
  const rising = (step: number) => {
    let at = below(5) * step;
    return Array.from({ length }, () => {
      at += (1 + below(5)) * step;
      return at;
    });
  };
  const cells = (of: () => number | string | null) => Array.from({ length }, of);
  const given = (
    column: string,
    unit: string,
    values: readonly (number | string | null)[],
    type?: 'text' | 'truth' | 'date',
  ) => ({
    id: `${name}-${column}`,
    kind: 'given' as const,
    name: column,
    optional: true,
    ...(unit !== '' && { unit }),
    ...(type && { type }),
    chunks: [values],
  });
  const part = {
    id: name,
    kind: 'table' as const,
    name,
    length,
    columns: [
      // Six rows make a whole grid, two by three.
      given(
        'x',
        'm',
        Array.from({ length }, (_, row) => 1 + (row % 2) * 4),
      ),
      given(
        'y',
        '-',
        Array.from({ length }, (_, row) => Math.floor(row / 2) * 0.75),
      ),
      given('key', 'ft', rising(2.5)),
      given('step', '-', rising(0.5)),
      given(
        'size',
        '-',
        cells(() => pick([0.25, -1, 3, 8.5, 0])),
      ),
      given(
        'span',
        'm',
        cells(() => pick([2, '3 ft', '18 in', 7.5])),
      ),
      given(
        'plan',
        'sf',
        cells(() => pick([20, 3.5, '2 m^2'])),
      ),
      given(
        'load',
        'kip',
        cells(() => pick([2, -4, '30 kN', 12.5])),
      ),
      given(
        'late',
        'kN',
        cells(() => (oneIn(3) ? null : pick([2, -4, 12.5]))),
      ),
      given(
        'gap',
        '-',
        cells(() => (oneIn(3) ? null : pick([2, -4, 12.5]))),
      ),
      given(
        'turn',
        'deg',
        cells(() => pick([10, 45, '0.3 rad', 0])),
      ),
      given(
        'kind',
        '',
        cells(() => pick(['clay', 'sand', 'Sand', 'peat'])),
        'text',
      ),
      given(
        'wet',
        '',
        cells(() => pick(['TRUE', 'FALSE'])),
        'truth',
      ),
      given(
        'on',
        '',
        cells(() => `2026-11-${10 + below(20)}`),
        'date',
      ),
    ],
  };
  const names: Partial<Record<Kind, readonly string[]>> = {
    plain: ['size', 'step'],
    length: ['key', 'span'],
    area: ['plan'],
    force: ['load'],
    angle: ['turn'],
    truth: ['wet'],
    text: ['kind'],
    date: ['on'],
  };
  return { name, part, names };
}

/** Every formula of a book by the id of its line or column, with the table of a column. */
export function formulasOf(
  book: Book,
): ReadonlyMap<string, { readonly formula: string; readonly table?: string }> {
  const found = new Map<string, { formula: string; table?: string }>();
  for (const { key, parts } of book.sheets) {
    for (const part of parts) {
      if (part.kind === 'rows') {
        for (const row of part.rows)
          if ('formula' in row) found.set(`${key}.${row.name}`, { formula: row.formula });
      } else if (part.kind === 'table') {
        const table = `${key}.${part.name}`;
        for (const column of part.columns)
          if ('formula' in column) found.set(`${table}.${column.name}`, { formula: column.formula, table });
      }
    }
  }
  return found;
}
