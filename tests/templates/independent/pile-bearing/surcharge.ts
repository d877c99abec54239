import type { Verdict } from '../program.ts';
import { effectiveStress, keptSurcharge, type Lengths, level, strengthAt } from './ground.ts';
import { type Inputs, type Maybe, sumOf, withAll } from './inputs.ts';
import { check, lines, type Names } from './names.ts';
import { type Bearing, partsBetween, type Slice } from './shaft.ts';

/**
 * What a surcharge that does not stay adds to the drag between two depths, kN: β of its stress; of clay by API, whose
 * friction rises no faster than the stress, in proportion to it and to the strength at most. Other rules ask no stress.
 */
export function addedDrag(
  inputs: Inputs,
  bearings: readonly Bearing[],
  slices: readonly Slice[],
  { from, to, water }: { readonly from: number; readonly to: number; readonly water: Maybe },
): Maybe {
  const passing = inputs.number('pile.σ_s') - keptSurcharge(inputs);
  return sumOf(
    partsBetween(inputs, slices, from, to).map(({ of, depth, length }) => {
      const bearing = bearings[of];
      if (!bearing) return null;
      const { rule, betaBy, beta, perimeter } = bearing.rules;
      const before = bearing.friction(depth);
      const [strength, stress] = [
        strengthAt(bearing.layer, depth),
        effectiveStress(bearing.layer, depth, water),
      ];
      const unit =
        betaBy !== 'none'
          ? withAll([beta], (one) => one * passing)
          : rule === 'API'
            ? withAll([before, strength, stress], (friction, most, own) =>
                own > 0 ? Math.min(most - friction, (friction * passing) / own) : 0,
              )
            : 0;
      return withAll([unit, perimeter], (friction, round) => friction * round * length);
    }),
  );
}

/** How high the fill of a surcharge stands, its weight submerged up to high water, and how high it may. */
export function fillLines(inputs: Inputs, { zero, head, water }: Lengths): Names {
  const [load, kept] = [inputs.number('pile.σ_s'), keptSurcharge(inputs)];
  const whole = inputs.number('pile.γ_fl');
  const submerged = whole - inputs.number('pile.γ_w');
  const height = withAll([water], (depth) => {
    const wet = Math.max(0, -depth);
    return load <= submerged * wet ? load / submerged : wet + (load - submerged * wet) / whole;
  });
  const room = withAll([roomOf(inputs, zero, head)], (one) => Math.max(0, one));
  const idle: Verdict = { verdict: 'does not apply' };
  return {
    ...lines('pile', { σ_r: kept, σ_d: load - kept, h_fl: height, h_fx: room }),
    'pile.c_fill': kept > 0 ? check(height, room) : idle,
  };
}

/** Up to the cut-off; a bed that is dredged is kept free down to the level that is owed to ships. */
function roomOf(inputs: Inputs, zero: number, head: Maybe): Maybe {
  const [bed, dredged] = [level(inputs, 'pile.El_bed'), level(inputs, 'pile.El_dr')];
  const isDredged = inputs.text('pile.z_by') === 'levels' && dredged < bed;
  return isDredged ? withAll([head], (up) => Math.min(up, dredged - zero)) : head;
}
