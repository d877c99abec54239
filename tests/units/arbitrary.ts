import fc from 'fast-check';
import { readUnit, standardUnits, type Unit } from '../../src/units/index.ts';

/** Any symbol of the registry that may stand in a compound. */
const anySymbol = fc.constantFrom(...standardUnits.infos.keys());

/** Any unit of the registry on its own, temperatures included. */
export const anySingleUnit: fc.Arbitrary<Unit> = anySymbol.map(unitOf);

const anyPower = fc.constantFrom('', '^2', '²', '^3', '^-1', '⁻¹', '^(1/2)', '^(-3/2)');
const anyFactor = fc.tuple(anySymbol, anyPower).map(([symbol, power]) => symbol + power);
const anyProduct = fc.tuple(
  fc.array(anyFactor, { minLength: 1, maxLength: 3 }),
  fc.constantFrom('·', '*', '-', ' '),
);

/** Any compound unit as text: products, powers, and perhaps something below a slash. */
const anyCompoundText: fc.Arbitrary<string> = fc
  .tuple(anyProduct, fc.option(anyProduct, { nil: undefined }))
  .map(([[above, joint], below]) => {
    const top = above.join(joint);
    if (below === undefined) return top;
    const [factors, mark] = below;
    return factors.length === 1 ? `${top}/${factors[0]}` : `${top}/(${factors.join(mark)})`;
  });

/** Any unit a line may have: single, compound, an elevation, plain. */
export const anyUnit: fc.Arbitrary<Unit> = fc.oneof(
  anySingleUnit,
  anyCompoundText.map(unitOf),
  fc.constantFrom('', 'ft MLLW', 'm NAVD88', 'El. ft', 'in MSL', '$', '$/cy', '€/m²', '°', '°C').map(unitOf),
);

/** A number somebody might compute: many sizes, both signs, zero, and awkward ones. */
export const anyNumber: fc.Arbitrary<number> = fc
  .oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 }),
    fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e30, max: 1e30 }),
    fc.integer({ min: -1_000_000, max: 1_000_000 }),
    fc.integer({ min: -100_000, max: 100_000 }).map((n) => n / 1000),
    fc.constantFrom(
      0,
      0.1,
      1 / 3,
      999.95,
      999.995,
      9999.5,
      99_999.5,
      1e-4,
      9.9996e-5,
      1e12,
      999_999_999_999.6,
    ),
  )
  // Subnormal numbers have fewer digits than a conversion needs.
  .filter((x) => x === 0 || Math.abs(x) > 1e-280);

/** The unit of a text that must read. */
export function unitOf(text: string): Unit {
  const unit = readUnit(text, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${text}: ${unit.problems[0]?.message}`);
  return unit.value;
}
