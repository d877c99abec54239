import { ELEVATION_PREFIX } from './elevation.ts';
import { normaliseLookAlikes } from './look-alikes.ts';
import { scanNumber, startsNumber } from './scan-number.ts';

/**
 * Whether a text is a number and nothing else, in any form an entry takes, that of an elevation too (`El. +12.5`): what a
 * unit is put behind. Digits whose signs can be read two ways count too, so that the unit is there when they are mended.
 */
export function isBareNumber(text: string): boolean {
  const source = normaliseLookAlikes(text).trim().replace(ELEVATION_PREFIX, '');
  const from = /^[+-] ?/.exec(source)?.[0].length ?? 0;
  if (!startsNumber(source.charAt(from))) return false;
  const number = scanNumber(source, from, 0);
  return number.ok ? number.value.end === source.length : /^[\d., ]+$/.test(source.slice(from));
}
