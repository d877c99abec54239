import { describe, expect, test } from 'vitest';
import { drawUtilisations } from '../../src/figures/index.ts';
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

describe.each(['wide', 'narrow'] as const)('the overview of checks on a %s page', (page) => {
  const { svg, table, description } = asText(drawUtilisations(notebook, page));
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
  expect(asText(drawUtilisations(notebookOf({}))).svg).toContain('This book has no checks yet.');
});
