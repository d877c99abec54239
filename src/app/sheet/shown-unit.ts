import { unitText } from '../../record/index.ts';

/** A unit as the unit column shows it: powers raised, degrees by their sign, nothing for plain numbers. */
export function shownUnit(text: string): string {
  if (text === '-') return '';
  if (text === 'deg') return '°';
  if (text === 'degC' || text === 'degF') return `°${text.slice(3)}`;
  return unitText(text);
}
