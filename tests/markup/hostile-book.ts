import { blankBook } from '../../src/document/index.ts';

/** Texts that a page would take for more than text, if they were ever put together as markup. */
const patterns = [
  'wall t<tmin of 12 mm & more',
  "<img src=x onerror='globalThis.strange=1' class=strange>",
  '</math><form action=https://example.invalid class=strange><button>send</button></form>',
  '&lt;b class=strange&gt; &amp;',
  '<style class=strange>*{display:none}</style>',
  ']]><script class=strange>globalThis.strange=1</script>',
  `'"><a class=strange href=javascript:globalThis.strange=1>go</a>`,
  '</title></desc></svg><iframe class=strange srcdoc=x></iframe>',
  '<!-- <mglyph class=strange><table class=strange>',
  '{{7*7}}<b class=strange',
] as const;

/** A book with such a text in every place that takes words; `texts` are all of them, each with a number of its own. */
export interface HostileBook {
  readonly json: string;
  readonly texts: ReadonlyMap<string, string>;
}

/** Such a book with texts as short as they are, or so long that no line holds them. */
export function hostileBook(length: 'short' | 'long'): HostileBook {
  const texts = new Map<string, string>();
  const text = (where: string, size: 'short' | 'long' = length): string => {
    const number = texts.size;
    const pattern = patterns[number % patterns.length] ?? '';
    const whole = `${number}° ${pattern}${size === 'long' ? ' and so on for longer than a line'.repeat(3) : ''}`;
    texts.set(where, whole);
    return whole;
  };
  // A text in a formula ends at its quotation mark.
  const literal = (where: string): string => {
    const whole = text(where).replaceAll('"', '');
    texts.set(where, whole);
    return `"${whole}"`;
  };
  const line = (kind: string, name: string, more: object) => ({
    id: name,
    kind,
    name,
    label: text(`label of ${name}`),
    reference: text(`reference of ${name}`),
    note: text(`note of ${name}`),
    ...more,
  });
  const [first, second] = [text('option one'), text('option two')];
  const soils = ['soil one', 'soil two', 'soil three'].map((where) => text(where));
  const long = literal('text that is chosen');
  const rows = [
    line('given', 'a', { entry: '5 m', unit: 'm', range: { min: '1 m', max: '4 m' } }),
    line('given', 'badEntry', { entry: text('entry that is no number'), unit: 'm' }),
    line('given', 'badUnit', { entry: '3', unit: text('unit that is none', 'short') }),
    line('given', 'own', { entry: '3', unit: 'quux' }),
    line('choice', 'pick', {
      entry: first,
      options: [
        { value: first, label: text('label of option one') },
        { value: second, label: text('label of option two') },
      ],
    }),
    line('choice', 'ground', { entry: soils[1] ?? '', from: 'layers.soil' }),
    line('calc', 'said', { formula: `IF(a > 1 m; ${long}; ${literal('text that is not chosen')})` }),
    line('calc', 'joined', {
      formula: `${literal('text at the left')} & ${literal('text at the right')} & pick`,
    }),
    line('calc', 'found', { formula: 'LOOKUP(ground; layers.soil; layers.z_t; "exact")', unit: 'm' }),
    line('calc', 'looked', {
      formula: `LOOKUP(${literal('key that is none')}; layers.soil; layers.z_t; "exact")`,
      unit: 'm',
    }),
    line('calc', 'broken', { formula: `a + ( ${text('formula that is none')}` }),
    line('check', 'c_a', { formula: `pick = ${literal('text to compare')}` }),
    line('check', 'c_b', { formula: 'a <= 4 m' }),
  ];
  const column = (name: string, more: object) => ({
    id: `k-${name}`,
    name,
    label: text(`label of column ${name}`),
    reference: text(`reference of column ${name}`),
    note: text(`note of column ${name}`),
    ...more,
  });
  const layers = {
    id: 'layers',
    kind: 'table',
    name: 'layers',
    title: text('title of the table'),
    length: 3,
    columns: [
      column('soil', { kind: 'given', type: 'text', chunks: [soils] }),
      column('z_t', { kind: 'given', unit: 'm', chunks: [[0, 5, 9]] }),
      column('z_b', { kind: 'given', unit: 'm', chunks: [[5, 9, 20]] }),
      column('kind', { kind: 'calc', formula: `IF(z_t > 1 m; ${literal('text in a column')}; soil)` }),
      column('odd', {
        kind: 'given',
        unit: 'm',
        optional: true,
        chunks: [['1', text('cell that is no number'), null]],
      }),
    ],
  };
  const pile = {
    cutoff: 'El_c',
    mudline: 'El_0',
    embedded: 'L',
    diameter: 'D',
    soil: 'layers.soil',
    top: 'layers.z_t',
    bottom: 'layers.z_b',
  };
  const sketched = [
    { id: 'El_c', kind: 'given', name: 'El_c', entry: '3 m', unit: 'm' },
    { id: 'El_0', kind: 'given', name: 'El_0', entry: '-8 m', unit: 'm' },
    { id: 'L', kind: 'given', name: 'L', entry: '15 m', unit: 'm' },
    { id: 'D', kind: 'given', name: 'D', entry: '0.6 m', unit: 'm' },
  ];
  const prose = ['text', 'heading', 'caution', 'assumption', 'open item', 'source'].map((role) => ({
    id: `prose-${role.replace(' ', '-')}`,
    kind: 'prose',
    role,
    text: text(`prose, ${role}`),
  }));
  const chart = (form: string, title?: string) => ({
    id: `chart-${form}`,
    kind: 'chart',
    form,
    ...(title !== undefined && { title }),
    table: 'layers',
    x: form === 'bar' ? 'soil' : 'z_t',
    y: ['z_b', 'z_t'],
  });
  const about = {
    purpose: text('purpose'),
    standard: text('standard'),
    scope: text('scope'),
    limits: [text('limit')],
    cautions: [text('caution')],
    assumptions: [text('assumption')],
  };
  const title = Object.fromEntries(
    ['project', 'subject', 'job', 'client', 'prepared', 'checked', 'date', 'revision'].map((field) => [
      field,
      text(`title block, ${field}`),
    ]),
  );
  const blank = blankBook();
  const book = {
    ...blank,
    title,
    about,
    settings: {
      ...blank.settings,
      units: [{ symbol: 'quux', definition: '2 m', note: text('note of a unit') }],
    },
    sheets: [
      {
        key: 'one',
        title: text('title of a sheet'),
        group: text('group of sheets'),
        parts: [
          ...prose,
          { id: 'rows', kind: 'rows', title: text('title of the lines'), rows },
          layers,
          chart('line', text('title of a chart')),
          chart('bar', text('title of a bar chart')),
          chart('histogram'),
        ],
      },
      {
        key: 'two',
        title: text('title of another sheet'),
        parts: [
          { id: 'more', kind: 'rows', rows: sketched },
          {
            id: 'sketch',
            kind: 'figure',
            figure: 'pile-profile',
            title: text('title of a sketch'),
            cells: { ...pile, soil: 'one.layers.soil', top: 'one.layers.z_t', bottom: 'one.layers.z_b' },
          },
          { id: 'lost', kind: 'figure', figure: 'pile-profil', cells: {} },
          {
            id: 'astray',
            kind: 'figure',
            figure: 'pile-profile',
            cells: { ...pile, cutoff: text('name of a cell that is none') },
          },
        ],
      },
    ],
  };
  return { json: JSON.stringify(book), texts };
}
