import { expect } from 'vitest';

/**
 * Expects a computed value to be the one worked out: numbers to a relative tolerance (absolute about zero), texts and
 * truth values exactly, `null` for no value; lists element by element.
 */
export function expectValue(found: unknown, expected: unknown, tolerance: number): void {
  if (Array.isArray(expected)) {
    expect(found).toHaveLength(expected.length);
    for (const [row, one] of expected.entries()) expectValue((found as unknown[])[row], one, tolerance);
  } else if (typeof expected === 'number') {
    expect(found).toBeTypeOf('number');
    const allowed = tolerance * (expected === 0 ? 1 : Math.abs(expected));
    expect(Math.abs((found as number) - expected), `${found} for ${expected}`).toBeLessThanOrEqual(allowed);
  } else expect(found).toBe(expected ?? undefined);
}
