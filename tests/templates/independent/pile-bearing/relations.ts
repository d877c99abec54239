import type { Verdict } from '../program.ts';
import type { Lengths } from './ground.ts';
import { type Inputs, withAll } from './inputs.ts';
import { check, type Names } from './names.ts';
import type { Section } from './section.ts';

const idle: Verdict = { verdict: 'does not apply' };

/** How the lengths and the measures of the section must stand to each other. */
export function relationsOf(inputs: Inputs, section: Section, lengths: Lengths): Names {
  const { tip, head, free, water } = lengths;
  const isCut = withAll([tip, head], (down, up) => (up < -1e-9 * Math.max(1, Math.abs(down)) ? 1 : 0));
  const isEven = water !== null && free !== null && Math.abs(water + free) < 1e-9;
  const isOther = inputs.text('pile.pile_kind') === 'stated';
  const [area, second] = [inputs.maybe('pile.A_m_in'), inputs.maybe('pile.I_in')];
  const size = inputs.number('pile.D');
  const radius = withAll([area, second], (mm2, mm4) => Math.sqrt(mm4 / mm2));
  const round = withAll([section.gross], (base) => 2 * Math.sqrt(Math.PI * base));
  return {
    'pile.c_pen': { verdict: tip === null ? 'refused' : tip > 0 ? 'holds' : 'fails' },
    'pile.c_cut': { verdict: isCut === null ? 'refused' : isCut === 1 ? 'fails' : 'holds' },
    ...(!isEven && {
      'pile.c_wat': check(
        withAll([water], (down) => -down),
        free,
      ),
    }),
    'pile.c_bore': section.isPipe ? check(2 * inputs.number('pile.t'), size) : idle,
    'pile.c_mat': isOther ? check(section.material, section.gross) : idle,
    'pile.c_per': isOther ? check(round, section.perimeter) : idle,
    'pile.c_rad': isOther ? check(radius, size / 2) : idle,
    // An H pile of depth and width D has the longest outline: 2 D + 4 D; its box is D².
    'pile.c_out': isOther ? check(section.perimeter, (6 * size) / 1000) : idle,
    'pile.c_size': isOther ? check(section.gross, (size / 1000) ** 2) : idle,
  };
}

const refused: Verdict = { verdict: 'refused' };

/** What rests on a section that there is not: none of it may be judged. */
export const withoutSection: Names = {
  'pile.D_i': null,
  'pile.A_m': null,
  'pile.W': null,
  'pile.A_e': null,
  ...Object.fromEntries(
    [
      'pile.c_left',
      'pile.c_comp',
      'pile.c_up',
      'loads.c_FSc',
      'loads.c_FSt',
      'loads.c_str',
      'loads.c_buck',
      'loads.c_ten',
    ].map((name) => [name, refused]),
  ),
};
