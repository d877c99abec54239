import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Outcome } from '../../src/diagnostics/index.ts';
import { catalogue } from '../../src/diagnostics/index.ts';
import { extendUnits, readEntry, readUnit, standardUnits } from '../../src/units/index.ts';
import { anyUnit } from './arbitrary.ts';
import { readFixtures } from './fixture.ts';
import { PATIENCE, SEED } from './seed.ts';

const scraps = [
  '12',
  '1,200',
  '.5',
  '1/2',
  '½',
  '1e5',
  'e400',
  '-',
  '+',
  "'",
  '"',
  "''",
  '°',
  'ft',
  'in',
  'kip',
  'kN',
  'lb',
  '%',
  '$',
  'USD',
  '€',
  'El. ',
  'MLLW',
  '2026-11-25',
  '11/25/2026',
  '/',
  '·',
  '*',
  '^2',
  '²',
  '^',
  '(',
  ')',
  ' ',
  '\u202f',
  '\u200b',
  '=',
  'TRUE',
  'Inf',
  'NaN',
  'Nov',
  '×10^',
  '⁻⁶',
  'Δ',
  '\ud800',
  '\0',
  '\n',
  '__proto__',
  'constructor',
];
const anyJunk = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((parts) => parts.join('')),
  fc.array(fc.constantFrom(...scraps), { maxLength: 8 }).map((parts) => parts.join(' ')),
);
const settings = { seed: SEED, numRuns: 10_000 };

test(
  'any text gives an entry that is finite, or problems in place',
  () => {
    fc.assert(
      fc.property(anyJunk, fc.option(anyUnit, { nil: undefined }), (text, row) => {
        const entry = readEntry(text, standardUnits, row);
        expectSound(entry, text);
        if (!entry.ok) return;
        if (entry.value.kind === 'number' || entry.value.kind === 'point') {
          expect(Number.isFinite(entry.value.si)).toBe(true);
          if (row !== undefined) expect(entry.value.unit.dimension.key).toBe(row.dimension.key);
          if (row !== undefined) expect(entry.value.unit.point).toBe(row.point);
        } else if (row !== undefined) {
          expect(entry.value.kind).toBe('missing');
        }
      }),
      settings,
    );
  },
  PATIENCE,
);

test(
  'any text gives a unit with a sound factor, or problems in place',
  () => {
    fc.assert(
      fc.property(anyJunk, (text) => {
        const unit = readUnit(text, standardUnits);
        expectSound(unit, text);
        if (unit.ok) expect(unit.value.factor > 0 && Number.isFinite(unit.value.factor)).toBe(true);
      }),
      settings,
    );
  },
  PATIENCE,
);

test(
  'any definitions give a registry, or problems',
  () => {
    const anyDefinition = fc.record({ symbol: anyJunk, definition: anyJunk });
    const anyExtension = fc.record({
      units: fc.array(anyDefinition, { maxLength: 3 }),
      datums: fc.array(anyJunk, { maxLength: 2 }),
      currency: anyJunk,
    });
    fc.assert(
      fc.property(anyExtension, (extension) => {
        const registry = extendUnits(standardUnits, extension);
        if (!registry.ok) expect(registry.problems.length).toBeGreaterThan(0);
      }),
      { seed: SEED, numRuns: 2000 },
    );
  },
  PATIENCE,
);

test(
  'a very long text is refused without reading it all over again',
  () => {
    for (const long of [
      '1'.repeat(1e6),
      '1,'.repeat(5e5),
      `${' '.repeat(1e6)}1`,
      `1 ${'kN·'.repeat(3e5)}`,
      '1 200'.repeat(2e5),
      "'".repeat(1e6),
    ]) {
      expectSound(readEntry(long, standardUnits), long);
      expectSound(readEntry(long, standardUnits, standardUnits.units.get('ft')), long);
      expectSound(readUnit(long, standardUnits), long);
    }
  },
  PATIENCE,
);

test('every fix of every refused entry can be put in, and what it makes is read or refused for another reason', () => {
  let tried = 0;
  for (const { columns, place } of readFixtures('entries')) {
    const [text = '', rowText = ''] = columns;
    const row = rowText === '' ? undefined : readUnit(rowText, standardUnits);
    const unit = row?.ok ? row.value : undefined;
    const entry = readEntry(text, standardUnits, unit);
    if (entry.ok) continue;
    for (const p of entry.problems) {
      for (const fix of p.fixes) {
        const mended = text.slice(0, fix.from) + fix.insert + text.slice(fix.to);
        const again = readEntry(mended, standardUnits, unit);
        const codes = again.ok ? [] : again.problems.map((problem) => problem.code);
        expect(codes, `${place}: ${mended}`).not.toContain(p.code);
        tried++;
      }
    }
  }
  expect(tried).toBeGreaterThan(75);
});

function expectSound(outcome: Outcome<unknown>, text: string): void {
  if (outcome.ok) return;
  expect(outcome.problems.length).toBeGreaterThan(0);
  for (const p of outcome.problems) {
    expect(Object.hasOwn(catalogue, p.code)).toBe(true);
    expect(
      0 <= p.from && p.from <= p.to && p.to <= text.length,
      `${p.code}@${p.from}-${p.to} of ${JSON.stringify(text)}`,
    ).toBe(true);
    expect(p.message).not.toContain('undefined');
    for (const fix of p.fixes)
      expect(0 <= fix.from && fix.from <= fix.to && fix.to <= text.length).toBe(true);
  }
}
