/**
 * Whether what stands before the unit of an entry holds no other unit: of "3 ft 6 in" the inches are only a part, and
 * without them it would be another length.
 */
export function isOneNumber(beforeUnit: string): boolean {
  return !/\d\s*(?![eE][+−-]?\d)[\p{L}'’′"”″]/u.test(beforeUnit);
}
