import type { Verdict } from '../program.ts';
import { type Inputs, type Maybe, withAll } from './inputs.ts';
import { type factorsOf, greatest, type Held, upliftFactor } from './loads.ts';
import { check, lines, type Names, where } from './names.ts';

/** The columns of the table of combinations. */
export function combinationColumns(held: readonly Held[]): Names {
  const column = (of: (one: Held) => Maybe) => held.map(of);
  return {
    'loads.combos.on': column(({ of }) => Number(of.counts)),
    'loads.combos.P': column(({ of }) => of.head),
    'loads.combos.f_W': column(({ of }) => of.weighing),
    'loads.combos.P_W': column(({ weight }) => weight),
    'loads.combos.N': column(({ compression }) => compression),
    'loads.combos.T': column(({ tension }) => tension),
    'loads.combos.F_sA': column(({ of }) => of.onShaft.asd),
    'loads.combos.F_sL': column(({ of }) => of.onShaft.lrfd),
    'loads.combos.F_s': column(({ of }) => of.onShaft.used),
    'loads.combos.F_b': column(({ of }) => of.onBase),
    'loads.combos.F_tA': column(({ of }) => of.inUplift.asd),
    'loads.combos.F_tL': column(({ of }) => of.inUplift.lrfd),
    'loads.combos.F_t': column(({ of }) => of.inUplift.used),
    'loads.combos.P_e': column(({ of }) => withAll([of.quake.hanging], (all) => of.shakes * all)),
    'loads.combos.R': column(({ resistance }) => resistance),
    'loads.combos.N_q': column(({ asked }) => asked),
    'loads.combos.T_q': column(({ askedInUplift }) => askedInUplift),
    'loads.combos.W_r': column(({ resistingWeight }) => resistingWeight),
    'loads.combos.W_f': column(({ lift }) => lift),
    'loads.combos.R_t': column(({ upliftResistance }) => upliftResistance),
    'loads.combos.N_h': column(({ withoutDrag }) => withoutDrag),
  };
}

/** Governing combinations and safeties. */
export function governing(
  inputs: Inputs,
  held: readonly Held[],
  capacity: {
    readonly shaft: Maybe;
    readonly base: Maybe;
    readonly compression: Maybe;
    readonly friction: Maybe;
    readonly lightWeight: Maybe;
    readonly plugWeight: Maybe;
    readonly factors: ReturnType<typeof factorsOf>;
  },
): Names {
  const counting = held.filter(({ of }) => of.counts);
  const rows: Verdict = { verdict: counting.length > 0 ? 'holds' : 'fails' };
  const { factors } = capacity;
  const isFactored = inputs.text('loads.basis') === 'LRFD';
  const onShaft = isFactored ? 1 / factors.resistance : (factors.safety[0] ?? Number.NaN);
  const inUplift = upliftFactor(inputs, factors);
  const onBase = inputs.stated('loads.F_ab') ?? onShaft;
  const [press, lift] = [
    greatest(counting, ({ used }) => used),
    greatest(counting, ({ usedInUplift }) => usedInUplift),
  ];
  const [heaviest, tautest] = [
    greatest(counting, ({ compression }) => compression),
    greatest(counting, ({ tension }) => tension),
  ];
  const [most, pull] = [heaviest?.compression ?? null, tautest?.tension ?? null];
  // What all combinations ask for; those of the other format ask for nothing.
  const asked = greatest(held, (one) => one.asked)?.asked ?? null;
  const askedInUplift = greatest(held, (one) => one.askedInUplift)?.askedInUplift ?? null;
  return {
    'loads.c_rows': rows,
    ...lines('loads', {
      F_a: onShaft,
      F_ab: onBase,
      F_ta: inUplift,
      Q_a: withAll([capacity.shaft, capacity.base], (along, under) => along / onShaft + under / onBase),
      T_a: withAll([capacity.friction], (all) => all / inUplift),
      u_max: press?.used ?? null,
      ut_max: lift?.usedInUplift ?? null,
      ...(isBetween(press?.used) &&
        !isTied(counting, press, ({ used }) => used) && {
          gov: press?.of.name ?? null,
          N_g: press?.compression ?? null,
          R_g: press?.resistance ?? null,
        }),
      ...(isBetween(lift?.usedInUplift) &&
        !isTied(counting, lift, ({ usedInUplift }) => usedInUplift) && {
          gov_t: lift?.of.name ?? null,
          T_g: lift?.tension ?? null,
          R_tg: lift?.upliftResistance ?? null,
        }),
      Q_cn: asked,
      Q_tn: askedInUplift,
      N_max: most,
      T_max: pull,
      FS_c: safety(capacity.compression, most),
      // The lift of a pile that floats is in the pull already.
      FS_t: safety(
        withAll(
          [capacity.friction, capacity.lightWeight, capacity.plugWeight],
          (all, own, plug) => all + Math.max(0, own + plug),
        ),
        pull,
      ),
    }),
    'pile.c_comp': where(
      most,
      governed(press?.used, check(press?.compression ?? null, press?.resistance ?? null)),
    ),
    'pile.c_up': where(
      pull,
      governed(lift?.usedInUplift, check(lift?.tension ?? null, lift?.upliftResistance ?? null)),
    ),
    'loads.c_FSc': where(most, check(asked, capacity.compression)),
    'loads.c_FSt': where(askedInUplift, check(askedInUplift, capacity.friction)),
  };
}

/** Ultimate capacity over the greatest demand; nothing where nothing is asked. */
function safety(capacity: Maybe, demand: Maybe): Maybe {
  return demand === 0 ? 0 : withAll([capacity, demand], (all, load) => all / load);
}

/** Whether one combination governs: without any demand none does, and those without resistance all stand at 1,000. */
function isBetween(used: Maybe | undefined): boolean {
  return Number(used) > 0 && Number(used) < 999.999;
}

/** Whether rounding decides which of several governs. */
function isTied(counting: readonly Held[], most: Held | undefined, of: (one: Held) => Maybe): boolean {
  const value = most && of(most);
  return counting.some(
    (one) => one !== most && Math.abs(Number(of(one)) - Number(value)) < 1e-9 * Number(value),
  );
}

function governed(used: Maybe | undefined, { verdict, utilisation }: Verdict): Verdict {
  return { verdict, ...(utilisation !== undefined && isBetween(used) && { utilisation }) };
}
