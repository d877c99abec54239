/** A volume of soil or debris in one state: the unit it is measured in, and what it is called. */
export interface VolumeState {
  readonly unit: string;
  readonly words: string;
}

const STATES: Readonly<Record<string, string>> = {
  b: 'in the bank, before it is dug',
  l: 'loose, after it is dug',
  c: 'compacted',
  e: 'in an embankment',
};

const MEASURES: Readonly<Record<string, readonly [unit: string, name: string]>> = {
  cy: ['cy', 'a cubic yard'],
  cf: ['cf', 'a cubic foot'],
  cm: ['m^3', 'a cubic metre'],
};

/**
 * The state that a symbol such as BCY or LCM says beside its volume. A cubic yard loose is another amount of soil than
 * one in the bank, so none of them is read as a plain cubic yard.
 */
export function volumeState(symbol: string): VolumeState | undefined {
  const [, state = '', measure = ''] = /^([blce])(cy|cf|cm)$/.exec(symbol.toLowerCase()) ?? [];
  // ccm is a cubic centimetre too.
  const [unit, name] = (symbol.toLowerCase() === 'ccm' ? undefined : MEASURES[measure]) ?? [];
  return unit === undefined ? undefined : { unit, words: `${name} ${STATES[state]}` };
}
