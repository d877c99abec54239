import type { Layer, lengthsOf } from './ground.ts';
import { type Inputs, type Maybe, withAll } from './inputs.ts';
import { greatest, type Held } from './loads.ts';
import { check, lines, type Names, where } from './names.ts';
import { memberOf, type Section } from './section.ts';
import { mm, mpa } from './small-units.ts';

/** The pile as a member at the end of life. */
export function structure(
  inputs: Inputs,
  section: Section,
  { free, embedded }: ReturnType<typeof lengthsOf>,
  held: readonly Held[],
  drag: Maybe,
  atPlane: (allowed: Maybe) => Names,
  layers: readonly Layer[],
): Names {
  const member = memberOf(inputs, section, free, layers);
  const counting = held.filter(({ of }) => of.counts);
  const isFactored = inputs.text('loads.basis') === 'LRFD';
  const onDrag =
    inputs.stated('loads.k_n') ?? (isFactored ? Math.max(1, ...counting.map(({ of }) => of.dragging)) : 1);
  // What liquefies is missed in the combinations that take the earthquake, and in no other.
  const { from } = member.shaken;
  const isShaken = ({ of }: Held): boolean => from !== null && from > 0 && of.shakes === 1;
  const forces = counting.map(({ withoutDrag }) => withoutDrag);
  const shaking = counting.filter(isShaken).map(({ withoutDrag }) => withoutDrag);
  // A weight that is not known is known in no combination.
  const isUnknown = from === null || held.some(({ withoutDrag }) => withoutDrag === null);
  const shaken = isUnknown ? null : Math.max(0, ...shaking.map(Number));
  const most =
    forces.some((force) => force === null) || forces.length === 0 ? null : Math.max(...forces.map(Number));
  // What passes over the pile relieves the drag as long: it hangs beside dead load and weight alone.
  const permanent = counting.map(({ of, weight }) =>
    withAll([weight, drag], (own, down) => (down > 0 ? Math.max(0, of.permanent + own) + onDrag * down : 0)),
  );
  const force = permanent.some((one) => one === null)
    ? null
    : withAll([most], (head) => Math.max(head, ...permanent.map(Number)));
  const stress = withAll([force, section.materialLeft], (axial, area) => (area > 0 ? axial / area : null));
  const shakenStress = withAll([shaken, section.materialLeft], (axial, area) =>
    area > 0 ? axial / area : null,
  );
  const isSteel = inputs.text('pile.material') === 'steel';
  const ratio = inputs.number('loads.E_s') / inputs.number('loads.f_y');
  // AISC 360 Table B4.1a: flanges of rolled sections, else round hollow sections.
  const isFlanged = isSteel && inputs.text('pile.pile_kind') === 'stated';
  const slenderest = isFlanged ? 0.56 * Math.sqrt(ratio) : 0.11 * ratio;
  const pull = greatest(counting, ({ tension }) => tension)?.tension ?? null;
  const stretched = withAll([pull, section.materialLeft], (axial, area) => (area > 0 ? axial / area : null));
  // AISC 360 D2; concrete takes no tension beyond its prestress.
  const yieldStress = inputs.number('loads.f_y');
  const allowed = isSteel
    ? isFactored
      ? 0.9 * yieldStress
      : yieldStress / 1.67
    : inputs.number('loads.f_pe');
  // ACI 318-19 19.2.2.1, in psi.
  const psi = 0.0044482216152605 / 0.0254 ** 2 / 1000;
  const goesWith = 57_000 * Math.sqrt(inputs.number("loads.f'_c") / psi) * psi;
  return {
    'loads.c_Ec': isSteel ? { verdict: 'does not apply' } : check(inputs.number('loads.E_c'), 1.2 * goesWith),
    ...lines('loads', {
      E_cx: goesWith,
      r_t: section.slenderness,
      r_lim: slenderest,
      σ_t: mpa(stretched),
      f_ta: allowed,
      E_m: mpa(member.modulus),
      L_f: member.atRest.fixity,
      L_he: member.shaken.reach,
      L_ne: member.shaken.wanted,
      L_fe: member.shaken.fixity,
      L_e: member.atRest.effective,
      L_ee: member.shaken.effective,
      r_e: mm(member.gyration),
      F_e: mpa(member.atRest.euler),
      F_ee: mpa(member.shaken.euler),
      ...(inputs.text('pile.material') === 'steel' && {
        F_cr: mpa(member.atRest.column),
        F_cre: mpa(member.shaken.column),
        f_st: mpa(member.atRest.steel),
      }),
      k_y: member.shareOfYield,
      f_con: mpa(member.concrete),
      f_a: mpa(member.atRest.allowed),
      f_ae: mpa(member.shaken.allowed),
      f_b: mpa(member.atRest.buckling),
      f_be: mpa(member.shaken.buckling),
      N_se: shaken,
      σ_ae: mpa(shakenStress),
      ...(counting.length > 0 && { k_n: onDrag }),
      N_st: force,
      σ_a: mpa(stress),
    }),
    'pile.z_f': member.shaken.from,
    'loads.c_fl': where(
      member.shaken.from,
      check(
        withAll([member.shaken.from, member.shaken.wanted], (down, more) => down + more),
        embedded,
      ),
    ),
    'loads.c_stre': where(shaken, check(shakenStress, member.shaken.allowed)),
    'loads.c_bucke': where(shaken, check(shakenStress, member.shaken.buckling)),
    ...atPlane(member.atRest.allowed),
    'loads.c_Dt': where(section.slenderness, check(section.slenderness, slenderest)),
    'loads.c_λ': isFlanged
      ? { verdict: inputs.number('pile.λ_f') > 0 ? 'holds' : 'fails' }
      : { verdict: 'does not apply' },
    'loads.c_ten': where(
      pull,
      check(
        withAll([stretched], (kPa) => kPa / 1000),
        allowed,
      ),
    ),
    ...ends(inputs),
    'loads.c_str': where(force, check(stress, member.atRest.allowed)),
    'loads.c_buck': where(force, check(stress, member.atRest.buckling)),
  };
}

/** Effective length factors as recommended of a column whose foot is fixed, by what its head may do: AISC 360 Commentary. */
const factorsOfEnds: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  held: { fixed: 0.65, hinged: 0.8 },
  sways: { fixed: 1.2, hinged: 2.1 },
};

function ends(inputs: Inputs): Names {
  const [side = '', turn = ''] = inputs.text('loads.head').split(', ');
  const least = factorsOfEnds[side]?.[turn] ?? null;
  return { 'loads.K_0': least, 'loads.c_K': check(least, inputs.number('loads.K_e')) };
}
