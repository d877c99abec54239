import { type Problem, problem } from '../diagnostics/index.ts';
import type { Range } from '../document/index.ts';
import { PLAIN_UNIT, readEntry, type Unit, type UnitRegistry, writeQuantity } from '../units/index.ts';

/** Says what is wrong with a value in SI whose sign a permitted range leaves out; undefined for every other. */
export type SignCheck = (si: number) => Problem | undefined;

const NOWHERE = { from: 0, to: 0 };

/**
 * A permitted range that begins at zero or above leaves no room for a negative value, nor one that ends at zero or below
 * for a positive one. Beyond the range in size a value is only pointed out, for a published example may be; a value of
 * the other sign is none at all: a negative strength or thickness would let checks hold. Undefined where the range says
 * nothing of a sign, and for levels and temperatures, whose zero is only a mark.
 *
 * @param unit what a bare number of the range is in
 * @param note what the line says of itself: it may tell how such a value is entered instead
 */
export function signCheck(
  range: Range | undefined,
  unit: Unit | undefined,
  registry: UnitRegistry,
  note?: string,
): SignCheck | undefined {
  if (!range) return undefined;
  const least = limitOf(range.min, unit, registry);
  const most = limitOf(range.max, unit, registry);
  const tooLow = least !== undefined && least.si >= 0 ? range.min : undefined;
  const tooHigh = most !== undefined && most.si <= 0 ? range.max : undefined;
  if (tooLow === undefined && tooHigh === undefined) return undefined;
  const shown = unit ?? least?.unit ?? most?.unit ?? PLAIN_UNIT;
  return (si) => {
    const limit = si < 0 ? tooLow : si > 0 ? tooHigh : undefined;
    if (limit === undefined) return undefined;
    const facts = { value: writeQuantity(si, shown), limit, sign: si < 0 ? 'negative' : 'positive' } as const;
    return problem('sign-excluded', NOWHERE, { ...facts, ...(note && { note }) });
  };
}

function limitOf(
  text: string | undefined,
  unit: Unit | undefined,
  registry: UnitRegistry,
): { readonly si: number; readonly unit: Unit } | undefined {
  if (text === undefined) return undefined;
  const read = readEntry(text, registry, unit);
  return read.ok && read.value.kind === 'number' ? read.value : undefined;
}
