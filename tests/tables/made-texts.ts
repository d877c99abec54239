import type { TableColumn } from '../../src/tables/index.ts';

/** The columns that made texts are written for, as a table of quantities has them. */
export const COLUMNS: readonly TableColumn[] = [
  { name: 'item', label: 'description', kind: 'given', type: 'text' },
  { name: 'area', label: 'area, if stated', kind: 'given', unit: 'sf' },
  { name: 'thick', label: 'thickness', kind: 'given', unit: 'in' },
  { name: 'V_s', label: 'Volume', kind: 'given', unit: 'cy' },
  { name: 'w', label: 'allowance', kind: 'given', unit: '%' },
  { name: 'V', label: 'volume in place', kind: 'calc', unit: 'cy' },
];

/**
 * Units people write and what one of them is in SI. The international foot is 0.3048 m and the inch 0.0254 m exactly
 * (NIST SP 811, 2008, Appendix B.6); the rest is their squares and cubes, written out.
 */
const UNITS: Readonly<Record<string, readonly (readonly [written: string, factor: number])[]>> = {
  area: [
    ['sf', 0.09290304],
    ['SF', 0.09290304],
    ['sq ft', 0.09290304],
    ['Sq. Ft.', 0.09290304],
    ['ft2', 0.09290304],
    ['ft²', 0.09290304],
    ['m2', 1],
    ['m²', 1],
    ['sqm', 1],
    ['sy', 0.83612736],
  ],
  thick: [
    ['in', 0.0254],
    ['IN', 0.0254],
    ['inches', 0.0254],
    ['ft', 0.3048],
    ['mm', 0.001],
    ['MM', 0.001],
    ['cm', 0.01],
    ['m', 1],
  ],
  V_s: [
    ['cy', 0.764554857984],
    ['CY', 0.764554857984],
    ['cu yd', 0.764554857984],
    ['CU. YD.', 0.764554857984],
    ['yd3', 0.764554857984],
    ['cf', 0.028316846592],
    ['m3', 1],
    ['m³', 1],
    ['cubic metres', 1],
  ],
  w: [
    ['%', 0.01],
    ['percent', 0.01],
    ['-', 1],
  ],
};

/** What one bare number is in SI in each column, by the unit of the table. */
const OWN: Readonly<Record<string, number>> = {
  area: 0.09290304,
  thick: 0.0254,
  V_s: 0.764554857984,
  w: 0.01,
};

/** What others call the columns. */
const FOREIGN: Readonly<Record<string, readonly string[]>> = {
  area: ['Fläche', 'Surface', 'Plan', 'Oppervlak'],
  thick: ['Dicke', 'Épaisseur', 'Thk.', 'Espesor'],
  V_s: ['Menge', 'Vol.', 'Quantité', 'Qty', 'Volumen'],
  w: ['Zuschlag', 'Waste', 'Perte'],
};

/** A row that was written: its words and its values in SI, by column; a blank cell is null. */
export type MadeRow = Readonly<Record<string, string | number | null>>;

/** A text as bytes, and what was written in it. */
export interface MadeText {
  readonly bytes: Uint8Array;
  readonly text: string;
  readonly rows: readonly MadeRow[];
  readonly decimal: 'point' | 'comma';
  /** Whether no number has a comma between its thousands, but in quotation marks. */
  readonly isPlain: boolean;
  /** The column of the text with a unit in each row, and the column of the table whose numbers they are of. */
  readonly units: { readonly position: number; readonly of: string } | undefined;
  /** The column of the text with remarks, which goes nowhere. */
  readonly remarks: number | undefined;
  /** The columns of the text whose headers name no column of the table, and where they go. */
  readonly foreign: ReadonlyMap<number, string>;
  /** The column of per cent without a unit stated, whose numbers are per cent. */
  readonly percent: number | undefined;
  /** The lines of titles, totals and notes, counted from 1. */
  readonly others: ReadonlySet<number>;
  /** What dashes and words for none, and parentheses, are in it. */
  readonly nil: 'blank' | 'zero';
  readonly parentheses: 'minus' | 'plain';
  /** Whether its lines end where their last cells are blank. */
  readonly isCut: boolean;
  /** Whether a careful person can read all of it: nothing is lost, and all numbers are numbers. */
  readonly isReadable: boolean;
}

/** Numbers in [0, 1) from a seed: a linear congruential generator of 32 bits with its bits mixed. */
function chance(seed: number): () => number {
  let state = (seed * 2654435761) >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const mixed = Math.imul(state ^ (state >>> 15), 2246822519);
    return ((mixed ^ (mixed >>> 13)) >>> 0) / 2 ** 32;
  };
}

interface Hand {
  readonly decimal: '.' | ',';
  readonly group: string;
  readonly delimiter: string;
  /** Whether cells that hold the delimiter are put in quotation marks. */
  readonly careful: boolean;
  /** Whether blank cells at the end of a row are not written. */
  readonly cut: boolean;
  readonly nil: 'blank' | 'zero';
  readonly parentheses: 'minus' | 'plain';
}

const HANDS: readonly (readonly [decimal: '.' | ',', group: string])[] = [
  ['.', ''],
  ['.', ','],
  ['.', ' '],
  ['.', "'"],
  [',', ''],
  [',', '.'],
  [',', ' '],
  [',', '\u202f'],
];

/** Makes a text as somebody might write it, by a seed. */
export function makeText(seed: number): MadeText {
  const random = chance(seed);
  const is = (share: number): boolean => random() < share;
  const one = <T>(items: readonly T[]): T => items[Math.floor(random() * items.length)] as T;
  const [decimal, group] = one(HANDS);
  const delimiter = one([',', ';', '\t', ',', ';', '\t', '|']);
  const careful = is(0.85);
  // Who parts decimals and cells by one sign, and leaves off blank cells, writes what nobody can read.
  const alone = is(0.08);
  const isLost = delimiter === ',' && decimal === ',' && !careful && !alone;
  const hand: Hand = {
    decimal,
    group,
    delimiter,
    careful,
    cut: !isLost && delimiter !== '|' && is(0.08),
    nil: one(['blank', 'zero']),
    parentheses: one(['minus', 'minus', 'plain']),
  };
  const numeric = ['area', 'thick', 'V_s', 'w'].filter(() => is(0.6));
  const names = alone
    ? [one(['area', 'thick', 'V_s', 'w'])]
    : numeric.length > 0
      ? ['item', ...numeric]
      : ['item', 'V_s'];
  // A dash alone under the only heading may be a blank cell as well as a unit.
  const named = names
    .map((name) => headOf(name, is, one))
    .map((head) => (alone && head.below === '-' ? { ...head, below: '(-)' } : head));
  const of = !alone && is(0.1) ? one(names.filter((name) => name !== 'item')) : undefined;
  // The column whose units stand in the rows says nothing of them itself.
  const heads = named.map((head) =>
    head.name === of ? { ...head, text: head.name, below: '', beside: '', isForeign: false } : head,
  );
  const foreign = new Map(
    heads.flatMap(({ name, isForeign }, at) => (isForeign ? [[at, name] as const] : [])),
  );
  const hasRemarks = !alone && is(0.08);
  const unitsAt = of === undefined ? undefined : names.length;
  const behind = [
    ...(of === undefined ? [] : [one(['Unit', 'UOM', 'U/M', 'Einheit', 'per', ''])]),
    ...(hasRemarks ? [one(['Remarks', 'Source', 'Rev.'])] : []),
  ];
  const hasUnitRow = heads.some(({ below }) => below !== '');

  const lines: string[][] = [];
  const others: string[][] = [];
  const other = (cells: string[]): void => {
    lines.push(cells);
    others.push(cells);
  };
  if (!alone && is(0.1))
    for (let at = 0; at < 2; at += 1) other(padded(['Takeoff of the north berth, rev. C'], names, is));
  lines.push([...heads.map(({ text }) => text), ...behind]);
  if (hasUnitRow) {
    const announced = one(['', '', 'Unit:', 'Units', 'Einheit', 'text', '-']);
    lines.push([
      ...heads.map(({ name, below }) => (name === 'item' ? announced : below)),
      ...behind.map(() => ''),
    ]);
  }
  if (heads.length + behind.length > 2 && is(0.04)) {
    const [open, close] = one([
      ['', ''],
      ['(', ')'],
    ]);
    other([...heads, ...behind].map((_, at) => `${open}${at + 1}${close}`));
  }
  const count = 1 + Math.floor(random() * 7);
  const decimals = Math.floor(random() * 4);
  const rows: MadeRow[] = [];
  const sums = new Map<string, number>();
  let isBroken = false;
  for (let at = 0; at < count; at += 1) {
    if (is(0.04)) lines.push([...names, ...behind].map(() => ''));
    const [unit, factor] = one(UNITS[of ?? 'V_s'] ?? []);
    const row: Record<string, string | number | null> = {};
    const cells = heads.map((head) => {
      if (head.name === 'item') {
        // Of rows without words most must have some, or nothing tells them from the others.
        const words = at > 1 && is(0.03) ? '' : itemOf(at, is);
        row.item = words === '' ? null : words.trim();
        return words;
      }
      if (is(0.08)) {
        row[head.name] = null;
        return '';
      }
      const size = head.name === 'w' ? one([1, 30]) : one([9, 90, 900, 9000]);
      const x = Number((random() * size + (decimals === 0 ? 1 : 0.1)).toFixed(decimals));
      const [text, value] = written(x, decimals, hand, is, one);
      sums.set(head.name, (sums.get(head.name) ?? 0) + x);
      row[head.name] = value === null ? null : value * (head.name === of ? factor : head.factor);
      return head.beside === '' || Number.isNaN(value) || !/[\d\uff10-\uff19]/.test(text)
        ? text
        : `${text} ${head.beside}`;
    });
    rows.push(row);
    const full = [
      ...cells,
      ...(of === undefined ? [] : [unit]),
      ...(hasRemarks ? [one(['', 'wet', '12', 'see 4'])] : []),
    ];
    // A row of which nothing is left is blank, and nobody can tell that a value is gone.
    const isShort = !hand.cut && !alone && is(0.02) && full.slice(0, -1).some((cell) => cell !== '');
    if (isShort) isBroken = true;
    // A row of nothing is none.
    if (full.every((cell) => cell === '')) rows.pop();
    lines.push(hand.cut ? withoutEnd(full) : isShort ? full.slice(0, -1) : full);
  }
  // Nothing beside a number alone tells that it is a sum or a note.
  if (!alone && is(0.12)) other(totalOf(heads, sums, decimals, hand, one));
  if (!alone && is(0.06)) other(padded(['* measured from the drawings'], names, is));

  const quoted = lines.map((cells) => cells.map((cell) => quotedIn(cell, hand)).join(hand.delimiter));
  const isFramed = delimiter === '|' && is(0.6) && !quoted.some((line) => line.includes('"'));
  const barred = isFramed ? quoted.map((line) => `| ${line} |`) : quoted;
  const lead = delimiter === ';' && is(0.1) ? ['sep=;'] : [];
  const text = `${[...lead, ...barred].join(one(['\n', '\r\n']))}${one(['', '\n', '\n\n'])}`;
  const starts = quoted.map(
    (_, at) => quoted.slice(0, at).join('\n').split('\n').length + (at > 0 ? 1 : 0) + lead.length,
  );
  // A line of one number is one cell whatever stands in it; a heading with a comma may be two.
  const plainCells = alone && delimiter === ',' ? heads.map((head) => head.text) : lines.flat();
  const isParted = careful || !plainCells.some((cell) => cell.includes(delimiter) && !/["\n]/.test(cell));
  const isNumeric = rows.every((row) => Object.values(row).every((value) => !Number.isNaN(value)));
  return {
    ...encoded(text, one),
    rows,
    isPlain: careful || group !== ',',
    foreign,
    percent: of === 'w' ? undefined : percentAt(heads),
    nil: hand.nil,
    parentheses: hand.parentheses,
    isCut: hand.cut,
    isReadable: isParted && isNumeric && !isBroken,
    units: of === undefined || unitsAt === undefined ? undefined : { position: unitsAt, of },
    remarks: hasRemarks ? names.length + behind.length - 1 : undefined,
    decimal: decimal === '.' ? 'point' : 'comma',
    others: new Set(others.map((cells) => starts[lines.indexOf(cells)] ?? 0)),
  };
}

/** Where the column of per cent stands whose header says nothing of its unit, if there is one. */
function percentAt(heads: readonly Head[]): number | undefined {
  const at = heads.findIndex(
    ({ name, text, below, beside }) =>
      name === 'w' && below === '' && beside === '' && /^(?:w|allowance)$/i.test(text),
  );
  return at < 0 ? undefined : at;
}

/** The cells of a row without the blank ones at its end. */
function withoutEnd(cells: readonly string[]): string[] {
  return cells.slice(0, cells.findLastIndex((cell) => cell !== '') + 1);
}

interface Head {
  readonly name: string;
  readonly text: string;
  /** The unit in the row below, '' for none. */
  readonly below: string;
  /** The unit beside each number, '' for none. */
  readonly beside: string;
  /** What one bare number of the column is in SI. */
  readonly factor: number;
  /** Whether the header is no name of the column, so that somebody has to say where it goes. */
  readonly isForeign: boolean;
}

function headOf(name: string, is: (share: number) => boolean, one: <T>(items: readonly T[]) => T): Head {
  const column = COLUMNS.find((found) => found.name === name);
  const called = one([name, name, column?.label ?? name, (column?.label ?? name).toUpperCase()]);
  const own = OWN[name];
  const units = UNITS[name];
  if (own === undefined || units === undefined)
    return { name, text: called, below: '', beside: '', factor: 1, isForeign: false };
  const [unit, factor] = one(units);
  const bare = { name, text: called, below: '', beside: '', factor, isForeign: false };
  if (is(0.25)) return { ...bare, factor: own };
  if (is(0.12)) return { ...bare, below: one([unit, `(${unit})`, `[${unit}]`]) };
  if (is(0.12) && unit !== '-') return { ...bare, beside: unit };
  if (is(0.12) && unit !== '-') {
    const word = one(FOREIGN[name] ?? []);
    const form = one([
      `${word} (${unit})`,
      `${word} [${unit}]`,
      `${word} ${unit}`,
      `${word} in ${unit}`,
      `${word}, ${unit}`,
      `${word} (${unit}) (net)`,
      `net ${word} {${unit}}`,
    ]);
    return { ...bare, text: form, isForeign: true };
  }
  const form = one([
    `${called} (${unit})`,
    `${called} [${unit}]`,
    `${called}, ${unit}`,
    `${called} ${unit}`,
    `${called}/${unit}`,
    `${called} in ${unit}`,
    `${called} - ${unit}`,
  ]);
  return { ...bare, text: form };
}

function itemOf(at: number, is: (share: number) => boolean): string {
  if (is(0.04)) return `slab ${at}\nwest, "low"`;
  return is(0.05) ? `Pfähle Ø ${at + 1}` : `slab ${at + 1}${is(0.1) ? ', east' : ''}`;
}

/** A number as the hand writes it, and its value where that is not the number itself. */
function written(
  x: number,
  decimals: number,
  hand: Hand,
  is: (share: number) => boolean,
  one: <T>(items: readonly T[]) => T,
): readonly [text: string, value: number | null] {
  const plain = digitsOf(x, decimals, hand);
  const none = hand.nil === 'zero' ? 0 : null;
  if (is(0.93)) return [plain, x];
  return one<readonly [string, number | null]>([
    [`(${plain})`, hand.parentheses === 'minus' ? -x : x],
    [`${plain}-`, -x],
    [`−${plain}`, -x],
    [`${x}E3`.replace('.', hand.decimal), x * 1000],
    ['12 1/2', 12.5],
    [plain.replace(/\d/g, (digit) => String.fromCharCode(digit.charCodeAt(0) + 0xfee0)), x],
    [`about ${plain}`, Number.NaN],
    [one(['12.03.2024', '2024-03-12', '3/4/2024', '1-2', '10:30']), Number.NaN],
    [one(['#N/A', '#REF!', 'TBC', '?']), Number.NaN],
    [one(['n/a', 'N/A', 'nil', 'none']), none],
    [one(['-', '--', '-']), none],
  ]);
}

function digitsOf(x: number, decimals: number, { decimal, group }: Hand): string {
  const [whole = '', fraction = ''] = x.toFixed(decimals).split('.');
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, group);
  return fraction === '' ? grouped : `${grouped}${decimal}${fraction}`;
}

function totalOf(
  heads: readonly Head[],
  sums: ReadonlyMap<string, number>,
  decimals: number,
  hand: Hand,
  one: <T>(items: readonly T[]) => T,
): string[] {
  return heads.map(({ name, beside }) => {
    if (name === 'item')
      return one([
        'Total',
        'TOTAL',
        'Grand total:',
        'Summe',
        'Subtotal',
        'All deck',
        'Σ',
        'c/f',
        'Subtotale',
        'Yhteensä',
        'Kokku',
        '',
      ]);
    const sum = digitsOf(sums.get(name) ?? 0, decimals, hand);
    return beside === '' ? sum : `${sum} ${beside}`;
  });
}

function padded(
  cells: readonly string[],
  names: readonly string[],
  is: (share: number) => boolean,
): string[] {
  return is(0.7) ? names.map((_, at) => cells[at] ?? '') : [...cells];
}

function quotedIn(cell: string, { delimiter, careful }: Hand): string {
  if (/["\n]/.test(cell)) return `"${cell.replaceAll('"', '""')}"`;
  return careful && cell.includes(delimiter) ? `"${cell}"` : cell;
}

function encoded(
  text: string,
  one: <T>(items: readonly T[]) => T,
): { readonly bytes: Uint8Array; readonly text: string } {
  const encoding = one(['utf-8', 'utf-8', 'utf-8', 'mark', 'utf-16le', 'utf-16le mark', 'utf-16be', '1252']);
  if (encoding === 'utf-8') return { text, bytes: Buffer.from(text, 'utf8') };
  if (encoding === 'mark') return { text, bytes: Buffer.from(`\ufeff${text}`, 'utf8') };
  if (encoding === '1252') {
    // Of what is written only these are not in Windows-1252, or not at their code point.
    const western = text
      .replaceAll('−', '-')
      .replaceAll('Σ', 'Sum')
      .replaceAll('\u202f', '\u00a0')
      .replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0));
    return { text: western, bytes: Buffer.from(western, 'latin1') };
  }
  const wide = Buffer.from(encoding.endsWith('mark') ? `\ufeff${text}` : text, 'utf16le');
  return { text, bytes: encoding === 'utf-16be' ? wide.swap16() : wide };
}
