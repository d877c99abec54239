import { expect, test } from 'vitest';
import { CURRENCY_CODES, CURRENCY_SIGNS } from '../../src/units/currency-table.ts';
import { readUnit, standardUnits } from '../../src/units/index.ts';

/** What the Unicode data of the runtime lists, as an independent source: it keeps codes that have been withdrawn. */
const listed = new Set(Intl.supportedValuesOf('currency'));

test('every code is a currency of the runtime, or known to be missing there', () => {
  // VED (Venezuela, beside VES) and CLF (Chile's unit of account, used in contracts) are ISO 4217 codes it leaves out.
  expect(CURRENCY_CODES.filter((code) => !listed.has(code))).toEqual(['CLF', 'VED']);
});

test('every code of the runtime is here, or withdrawn, or no money', () => {
  const missing = [...listed].filter((code) => !CURRENCY_CODES.includes(code));
  // Withdrawn: ANG 2025, BGN 2026, CUC 2021, HRK 2023, SLL 2024, ZWL 2024. Units of account: XDR, XSU.
  expect(missing.sort()).toEqual(['ANG', 'BGN', 'CUC', 'HRK', 'SLL', 'XDR', 'XSU', 'ZWL']);
});

test('no code stands twice, and every one is a dimension of its own', () => {
  expect(new Set(CURRENCY_CODES).size).toBe(CURRENCY_CODES.length);
  for (const code of CURRENCY_CODES) {
    const unit = readUnit(code, standardUnits);
    expect(unit.ok && unit.value).toMatchObject({ factor: 1, offset: 0, dimension: { key: code } });
  }
});

test('a sign means one currency', () => {
  for (const [sign, code] of CURRENCY_SIGNS) {
    const unit = readUnit(sign, standardUnits);
    expect(unit.ok && unit.value.dimension.key).toBe(code);
  }
});
