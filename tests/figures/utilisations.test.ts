import { describe, expect, test } from 'vitest';
import { type Book, blankBook } from '../../src/document/index.ts';
import { drawUtilisations } from '../../src/figures/index.ts';
import { openNotebook } from '../../src/notebook/index.ts';
import { asText, notebookOf, parts, shapesOf } from './picture.ts';

const check = (name: string, formula: string, label?: string) => ({
  id: name,
  kind: 'check',
  name,
  formula,
  ...(label !== undefined && { label }),
});
const notebook = notebookOf({ N: '90 kN', R: '100 kN', V: '130 kN', Z: '' }, {}, [
  {
    id: 'checks',
    kind: 'rows',
    rows: [
      check('c_N', 'N <= R', 'bearing of the <pile>'),
      check('c_V', 'V <= R', 'shear'),
      check('c_9', '9 * V <= R', 'far beyond'),
      check('c_Z', 'Z <= R', 'settlement'),
      check('c_b', 'N <> R', 'not equal'),
    ],
  },
]);

/** The one drawing of a few checks, as text. */
function only(drawings: ReturnType<typeof drawUtilisations>) {
  const [first] = drawings;
  if (!first || drawings.length !== 1) throw new Error(`${drawings.length} drawings`);
  return asText(first);
}

describe.each(['wide', 'narrow'] as const)('the overview of checks on a %s page', (page) => {
  const { svg, table, description } = only(drawUtilisations(notebook, page));
  const [holds, fails, far] = parts(svg, 'use');

  test('bars are as long as the utilisations, up to the end of the field', () => {
    expect((fails?.n('width') ?? 0) / (holds?.n('width') ?? 1)).toBeCloseTo(1.3 / 0.9, 2);
    expect(far?.n('width')).toBeLessThan(11.7 * ((holds?.n('width') ?? 0) / 0.9));
    const limit = shapesOf(svg).find(({ attributes }) => attributes.class === 'limit');
    expect((limit?.n('x1') ?? 0) - (holds?.n('x') ?? 0)).toBeCloseTo((holds?.n('width') ?? 0) / 0.9, 1);
  });

  test('what fails differs in shape and words, not by colour alone', () => {
    expect(holds?.attributes.class).toBe('holds-bar');
    expect(fails?.attributes.fill).toBe('url(#utilisations-hatch-fails)');
    const texts = shapesOf(svg)
      .filter(({ name }) => name === 'text')
      .map(({ text }) => text);
    expect(texts.filter((text) => text === 'holds')).toHaveLength(2);
    expect(texts.filter((text) => text === 'fails')).toHaveLength(2);
    expect(texts).toContain('no value');
    expect(texts).toContain('130 %');
  });

  test('keeps within its page', () => {
    const width = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
    for (const { name, n } of shapesOf(svg))
      if (name === 'rect') expect(n('x') + n('width')).toBeLessThanOrEqual(width);
  });

  test('has room for each verdict up to its edge', () => {
    const width = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]);
    const verdicts = shapesOf(svg).filter(
      ({ name, text }) => name === 'text' && /^(holds|fails|no value)$/.test(text),
    );
    expect(verdicts).toHaveLength(5);
    // Chromium sets “no value” 44.2 wide in the page's own typeface, and other typefaces up to a tenth wider.
    for (const { n } of verdicts) expect(n('x') + 1.1 * 44.2).toBeLessThanOrEqual(width);
  });

  test('names the checks and how they stand', () => {
    expect(description).toBe(
      '5 checks: 2 hold, 2 fail, 1 without a value. Fails: shear 130 %; far beyond 1170 %.',
    );
    expect(table?.rows[0]).toEqual(['Sheet', 'bearing of the <pile>', '90 %', 'holds']);
    expect(svg).toContain('bearing of the &lt;pile&gt;');
  });
});

test('a book without checks says so', () => {
  expect(only(drawUtilisations(notebookOf({}))).svg).toContain('This book has no checks yet.');
});

describe('a check that rests on a value beyond its permitted range', () => {
  const ranged = { id: 't', kind: 'given', name: 't', entry: '90 mm', range: { max: '50 mm' } };
  const rows = [
    ranged,
    check('c_t', 't <= 100 mm', 'thin'),
    check('c_u', 't <= 60 mm', 'thick'),
    check('c_v', '1 <= 2', 'plain'),
  ];
  const { svg, table, description } = only(
    drawUtilisations(notebookOf({}, {}, [{ id: 'q', kind: 'rows', rows }])),
  );
  const shapes = shapesOf(svg);

  test('has another bar than one that simply holds, and a sign beside its verdict, which is explained', () => {
    expect(parts(svg, 'use').map(({ attributes }) => attributes.class)).toEqual([
      'beyond-bar',
      'fails-edge',
      'holds-bar',
    ]);
    // One for each of the two checks, one before the words that explain it.
    expect(shapes.filter(({ attributes }) => attributes.class === 'warn-edge')).toHaveLength(3);
    expect(shapes.map(({ text }) => text)).toContain('rests on values beyond their permitted ranges');
  });

  test('says so in words, and is counted apart', () => {
    expect(table?.rows.map((cells) => cells.at(-1))).toEqual(['holds, beyond range', 'fails', 'holds']);
    expect(description).toMatch(
      /^3 checks: 1 hold, 1 hold beyond a permitted range, 1 fail, 0 without a value\./,
    );
  });
});

describe('a check that holds only by a stated value', () => {
  const stated = { entry: '50 mm', reason: 'measured' };
  const rows = [
    { id: 'd', kind: 'calc', name: 'd', formula: '90 mm', unit: 'mm', stated },
    check('c_t', 'd <= 60 mm', 'thin'),
    check('c_u', 'd <= 100 mm', 'thick'),
  ];
  const notebook = notebookOf({}, {}, [{ id: 'q', kind: 'rows', rows }]);
  notebook.judgeStated();
  const { svg, table, description } = only(drawUtilisations(notebook));

  test('is told from one that would hold without it, in shape, in words and by its sign', () => {
    expect(parts(svg, 'use').map(({ attributes }) => attributes.class)).toEqual(['beyond-bar', 'holds-bar']);
    expect(shapesOf(svg).filter(({ attributes }) => attributes.class === 'warn-edge')).toHaveLength(2);
    expect(shapesOf(svg).map(({ text }) => text)).toContain('holds only by stated values');
    expect(table?.rows.map((cells) => cells.at(-1))).toEqual(['holds, only by stated values', 'holds']);
    expect(description).toMatch(/^2 checks: 1 hold, 1 hold only by stated values, 0 fail/);
  });
});

describe('the overview of many checks', () => {
  const sheet = (key: string, count: number) => ({
    key,
    title: `Sheet ${key}`,
    parts: [
      { id: 'p', kind: 'rows', rows: Array.from({ length: count }, (_, at) => check(`c_${at}`, '1 <= 2')) },
    ],
  });
  const drawn = (...counts: readonly number[]) => {
    const sheets = counts.map((count, at) => sheet(`s${at}`, count));
    return drawUtilisations(openNotebook({ ...blankBook(), sheets } as Book)).map((one) => {
      const { svg } = asText(one);
      const height = Number(/viewBox="0 0 \d+ (\d+)"/.exec(svg)?.[1]);
      const headings = [...svg.matchAll(/Sheet s\d(?:, continued)?/g)].map(([words]) => words);
      return { height, headings, checks: [...svg.matchAll(/data-check/g)].length };
    });
  };

  test('is as many drawings as fit on pages, none of them taller than one', () => {
    const parts = drawn(59);
    expect(parts.map(({ checks }) => checks)).toEqual([34, 25]);
    expect(parts.map(({ headings }) => headings)).toEqual([['Sheet s0'], ['Sheet s0, continued']]);
    for (const { height } of parts) expect(height).toBeLessThanOrEqual(920);
  });

  test('keeps the checks of a sheet together where the page before is full but for a quarter', () => {
    expect(drawn(26, 20).map(({ checks }) => checks)).toEqual([26, 20]);
    expect(drawn(10, 20).map(({ checks }) => checks)).toEqual([30]);
    expect(drawn(5, 33).map(({ checks, headings }) => [checks, headings])).toEqual([
      [33, ['Sheet s0', 'Sheet s1']],
      [5, ['Sheet s1, continued']],
    ]);
  });

  test('leaves no heading alone at the end', () => {
    expect(drawn(32, 40).map(({ checks }) => checks)).toEqual([32, 34, 6]);
  });
});

describe('the checks nearest to their limit first', () => {
  const two = {
    ...blankBook(),
    sheets: [
      {
        key: 'a',
        title: 'First',
        parts: [
          { id: 'p', kind: 'rows', rows: [check('c_1', '1 <= 4', 'far'), check('c_2', '9 <= 10', 'near')] },
        ],
      },
      {
        key: 'b',
        title: 'Second',
        parts: [
          {
            id: 'q',
            kind: 'rows',
            rows: [
              check('c_3', '1 <> 2', 'only holds'),
              check('c_4', '3 <= 2', 'fails'),
              check('c_5', '5 <= 2', 'fails by more'),
              check('c_6', '', 'blank'),
              check('c_7', '1 = 2', 'only fails'),
            ],
          },
        ],
      },
    ],
  } as Book;

  test('what fails in front, then by how near they are, then those of yes and no, and each says of which sheet it is', () => {
    const { svg, table } = only(drawUtilisations(openNotebook(two), 'wide', 'nearest'));
    expect(table?.rows.map(([sheet, name]) => `${sheet}: ${name}`)).toEqual([
      'Second: only fails',
      'Second: fails by more',
      'Second: fails',
      'First: near',
      'First: far',
      'Second: only holds',
      'Second: blank',
    ]);
    const texts = shapesOf(svg).map(({ text }) => text);
    expect(texts).toContain('near (First)');
    expect(texts).not.toContain('First');
  });
});

test('a long description takes further lines, all of it is there, and what follows moves down', () => {
  const words =
    'no stated volume of any item of the takeoff is below its area times its least thickness by more than a tenth';
  const rows = [check('c_l', '1 <= 2', words), check('c_s', '1 <= 2', 'short')];
  const { svg } = only(drawUtilisations(notebookOf({}, {}, [{ id: 'q', kind: 'rows', rows }])));
  expect(svg).not.toContain('…');
  const written = shapesOf(svg).filter(({ name, n }) => name === 'text' && n('x') === 20);
  expect(
    written
      .slice(0, -1)
      .map(({ text }) => text)
      .join(' '),
  ).toBe(words);
  expect(written.length).toBeGreaterThan(3);
  const [at, before] = [written.at(-1)?.n('y') ?? 0, written.at(-2)?.n('y') ?? 0];
  expect(at).toBeGreaterThanOrEqual(before + 15);
});
