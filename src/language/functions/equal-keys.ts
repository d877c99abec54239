/** Numbers equal to the tolerance of comparison: a relative 1e-12. */
export function equalKeys(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b));
}
