import type { Random } from '../recheck/random.ts';

/** A text made to break what reads it, and the way it was made. */
export interface HostileText {
  readonly way: string;
  readonly text: string;
}

/** Names that every object or function has of its own. */
const inherited = [
  'constructor',
  '__proto__',
  'prototype',
  'toString',
  'valueOf',
  'hasOwnProperty',
  '__defineGetter__',
];

const markup = [
  '<img src=x onerror=globalThis.strange=1 class=strange>',
  '</math></svg><form action=https://example.invalid class=strange><button>send</button></form>',
  '<script class=strange>globalThis.strange=1</script>',
  `'"><a class=strange href=javascript:globalThis.strange=1>go</a>`,
  '<iframe class=strange srcdoc="<script>top.strange=1</script>"></iframe>',
  '<style class=strange>@import "https://example.invalid/x.css";</style>',
  '<svg class=strange><use href="https://example.invalid/x.svg#a"/><animate onbegin=globalThis.strange=1 /></svg>',
  '<base class=strange href=https://example.invalid/><link class=strange rel=stylesheet href=https://example.invalid/x.css>',
  '<meta class=strange http-equiv=refresh content="0;url=https://example.invalid/">',
  '<math class=strange><annotation-xml encoding=text/html><video src=x onerror=globalThis.strange=1></math>',
  'url(https://example.invalid/x.png); background: url(https://example.invalid/x.png)',
  '$' + '{globalThis.strange=1}{{strange=1}}',
];

const controls = [
  '\u0000',
  '\u0007',
  '\u001b[2J',
  '\u200b',
  '\u202e',
  '\u2066',
  '\ufeff',
  '\ud800',
  '\udfff',
  '\u2028',
  '\u0301',
];

const numbers = [
  '1e308',
  '1e999',
  '-1e-999',
  '9'.repeat(400),
  `0.${'0'.repeat(400)}1`,
  '1e',
  '0x10',
  '1_000',
  'Infinity',
  'NaN',
  '-0',
  '٣',
];

const repeated = [
  '(',
  '-',
  'IF(TRUE;',
  '1+(',
  '"',
  "'",
  '[',
  '{"a":',
  'a.',
  '^2',
  '%',
  '/',
  'm·',
  '1 ',
  ';',
  'NOT(',
  '√',
  '=',
  '\\',
  '||',
  '((a+)+)+',
  '.*',
  'a a ',
  '1,',
  '12\'-6 1/2" ',
  '\t',
  '\n',
  '&',
  'kN/',
];

const formulas = [
  '2^(2^(2^(2^9)))',
  '1e308 * 1e308',
  'SUM(t.n * u.n * t.n)',
  'SUMIF(t.n > t.n; t.n)',
  'SERIES(0; 1e9; 1e-9)',
  'INDEX(t.n; 1e15)',
  'LARGE(t.n; -1)',
  'ROUND(1/3; 1e9)',
  'ROUND(1e300; -400)',
  'MOD(1e300; 1e-300)',
  'CEILING(1e300; 1e-300)',
  'TEXT(1e300; "m"; 1e6)',
  'LEFT("a"; 1e15)',
  'MID("a"; -1e15; 1e15)',
  'DATE(1e9; 1e9; 1e9)',
  'WORKDAY(DATE(2026;1;1); 1e12)',
  'NETWORKDAYS(DATE(1;1;1); DATE(9999;12;31))',
  'BETAINV(1e-300; 1e-300; 1e300; 0; 1)',
  'NORMSINV(1e-320)',
  'a + a.a.a.a',
  '1 m^99999999',
  '5 (m^(1/99999999))',
  '1 (kN/(m/(s/(kg/m))))',
  'LOOKUP("constructor"; t.toString; t.n; "exact")',
];

/** One of the ways, with a length by chance. */
export function hostileText({ pick, below, oneIn }: Random): HostileText {
  const length = pick([1, 3, 30, 300, 3_000, 30_000]);
  const many = (text: string): string => text.repeat(Math.ceil(length / text.length));
  const ways: readonly (readonly [way: string, make: () => string])[] = [
    ['repeated', () => many(pick(repeated)) + pick(['', '1', ')', 'x'])],
    ['nested', () => `${'('.repeat(length)}1${')'.repeat(length)}`],
    ['nested choices', () => `${'IF(a > 1;'.repeat(length % 3001)}1${';0)'.repeat(length % 3001)}`],
    [
      'long sum',
      () =>
        Array.from({ length: length % 3001 }, (_, at) => `a${at % 7}`).join(
          pick([' + ', ' * ', '^', ' & ', '; ']),
        ),
    ],
    [
      'inherited',
      () => `${pick(inherited)}${pick(['', '(1)', '.length', ' m', ' = 1', '.constructor', '\t1'])}`,
    ],
    ['markup', () => `${pick(markup)}${oneIn(3) ? many('long ') : ''}`],
    [
      'controls',
      () => Array.from({ length: 1 + below(9) }, () => pick(controls) + pick(['', 'a', '1', ' '])).join(''),
    ],
    [
      'numbers',
      () =>
        `${pick(['', '-', '=', '(', '1 + ', '2^'])}${pick(numbers)}${pick(['', ' m', ' %', 'e5', ' kN/m', '^9'])}`,
    ],
    ['formula', () => pick(formulas)],
    [
      'formulas',
      () =>
        Array.from({ length: 2 + below(4) }, () => pick(formulas)).join(pick([' + ', ' * ', '; ', ' = '])),
    ],
    ['letters', () => many(pick(['a', 'Ω', '漢', '😀', 'é', 'ﬁ', 'ß', 'İ']))],
    [
      'anything',
      () =>
        Array.from({ length: 1 + below(40) }, () =>
          String.fromCodePoint(1 + below(oneIn(4) ? 0xd7ff : 126)),
        ).join(''),
    ],
    ['table', () => `n (m);k\n${many(`${pick(numbers)};${pick(inherited)}\n`)}`],
  ];
  const [way, make] = pick(ways);
  return { way, text: make() };
}
