import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Row } from '../../../src/document/index.ts';
import { openNotebook } from '../../../src/notebook/index.ts';
import { idsOfLikeLines, numberOfLine } from '../../../src/record/values/like-lines.ts';
import { decimalsOfLines } from '../../../src/record/values/shared-decimals.ts';
import { fromSI, readEntry, standardUnits, toSI, type Unit, writeIn } from '../../../src/units/index.ts';
import { blockOf, bookOf, calc, given } from '../../make-book.ts';

const check = (name: string, formula: string): Row => ({ id: name, kind: 'check', name, formula });
const kN = (name: string, formula: string): Row => calc(name, { formula, unit: 'kN' });

/** The numbers of a block's lines as the page shows them, with what stands unseen behind them in brackets. */
function shown(...rows: readonly Row[]): readonly (string | undefined)[] {
  const notebook = openNotebook(bookOf({ s: [blockOf('b', ...rows)] }));
  return rows.flatMap(({ name, kind }) => {
    const item = notebook.model.items.get(`s.${name}`);
    if (kind === 'check' || !item) return [];
    const among = numberOfLine(notebook, item, 'written');
    return [
      among && `${among.number}${among.behind === '' ? '' : `(${among.behind})`}`.replace(/\u202f/g, ' '),
    ];
  });
}

describe('neighbouring lines of one unit', () => {
  test.each([
    ['as few decimals as one has alone', ['12.3456 kN', '345.678 kN'], ['12.3', '345.7']],
    ['none where one has none', ['1440.2 kN', '345.678 kN'], ['1440', '346']],
    ['zeros behind what is exact', ['4 kN', '12.3456 kN'], ['4.00', '12.35']],
    ['digits of exact numbers stay', ['12.5 kN', '1440.2 kN'], ['12.5', '1440(.0)']],
    ['three digits stay at least', ['12.3456 kN', '1440.2 kN'], ['12.35', '1440(.00)']],
    ['small beside large stands at its mark', ['0.61098 kN', '12.3456 kN'], ['0.611', '12.35(0)']],
    ['what differs is told apart', ['123.41 kN', '123.44 kN', '1440.2 kN'], ['123', '123', '1440']],
  ])('%s', (title, formulas, expected) => {
    const rows = formulas.map((formula, at) => kN(`x_${at}`, `${formula.replace(' kN', '')} (kN) * n`));
    const all = shown(...rows, given('n', '1', '-')).slice(0, -1);
    // 123.41 and 123.44 are 123.4 alone already: no more is hidden than by four digits.
    expect(all, title).toEqual(expected);
  });

  test('numbers that differ with four digits differ beside their neighbours', () => {
    expect(
      shown(
        kN('a', '123.4 (kN) * n / 0.9999'),
        kN('b', '123.3 (kN)*n / 0.9999'),
        kN('c', '1440.2 (kN) * n'),
        given('n', '1'),
      ),
    ).toEqual(['123.4', '123.3', '1440(.0)', '1']);
  });

  test('a line that a check compares keeps its digits', () => {
    const rows = [kN('a', '345.678 (kN) * n'), kN('c', '1440.2 (kN) * n'), given('n', '1', '-')];
    expect(shown(...rows)).toEqual(['346', '1440', '1']);
    expect(shown(...rows, check('c_a', 'a <= 345.7 (kN)'))).toEqual(['345.7', '1440(.0)', '1']);
  });

  test('what is typed keeps its digits and has the others at its mark', () => {
    expect(shown(given('a', '12.50', 'kN'), given('b', '3', 'kN'), kN('c', 'a + b'))).toEqual([
      '12.50',
      '3(.00)',
      '15.5(0)',
    ]);
  });

  test('end at another unit, and at a line that is no number', () => {
    const rows = [
      given('a', '1.5', 'kN'),
      given('L', '2', 'm'),
      check('c', 'L <= 3 (m)'),
      given('b', '4', 'm'),
      given('t', '2.25', 'm'),
    ];
    expect(shown(...rows)).toEqual(['1.5', '2', '4(.00)', '2.25']);
    const notebook = openNotebook(bookOf({ s: [blockOf('b', ...rows)] }));
    const item = notebook.model.items.get('s.b');
    expect(item && idsOfLikeLines(notebook, item, 'written')).toEqual(['s.b', 's.t']);
  });
});

test('shared decimals hide nothing: each reads back within half of the last digit, keeps three digits, and differs where it did (seed 20261125)', () => {
  const read = readEntry('1 kN', standardUnits);
  if (!read.ok || read.value.kind !== 'number') throw new Error('kN is no unit');
  const unit: Unit = read.value.unit;
  const number = fc.tuple(fc.double({ min: 1, max: 10, noNaN: true }), fc.integer({ min: -2, max: 4 }));
  fc.assert(
    fc.property(fc.array(number, { minLength: 1, maxLength: 6 }), (drawn) => {
      const values = drawn.map(([x, power]) => toSI(x * 10 ** power, unit));
      const decimals = decimalsOfLines(
        values,
        unit,
        values.map(() => false),
      );
      if (decimals === undefined) return;
      const alone = values.map((si) => writeIn(si, unit));
      const together = values.map((si) => writeIn(si, unit, { decimals }));
      for (const [at, text] of together.entries()) {
        const entry = readEntry(text, standardUnits, unit);
        if (!entry.ok || entry.value.kind !== 'number') throw new Error(`${text} does not read`);
        const value = fromSI(values[at] ?? 0, unit);
        const back = fromSI(entry.value.si, unit);
        expect(Math.abs(back - value), text).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-9));
        expect(Math.abs(back - value), text).toBeLessThanOrEqual(0.005 * Math.abs(value));
        for (const [other, its] of together.entries())
          expect(text === its, `${text} ${its}`).toBe(alone[at] === alone[other]);
      }
    }),
    { seed: 20261125, numRuns: 3000 },
  );
});
