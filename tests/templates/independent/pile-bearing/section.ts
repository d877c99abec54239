import { heldFrom, type Layer } from './ground.ts';
import { type Inputs, type Maybe, sumOf, withAll } from './inputs.ts';
import { between, corrosion } from './tables.ts';

/** The section of a pile, new and at the end of life, m and kN/m³. */
export interface Section {
  readonly isPipe: boolean;
  readonly isOpen: boolean;
  /** An open pipe, or a section of unknown shape: it may displace little soil. */
  readonly displacesLittle: boolean;
  readonly inside: number;
  readonly perimeter: Maybe;
  readonly insidePerimeter: number;
  readonly gross: Maybe;
  readonly plug: number;
  readonly ring: Maybe;
  readonly material: Maybe;
  readonly displacing: Maybe;
  readonly weightOfMaterial: number;
  readonly weight: Maybe;
  /** What fills a closed pipe, for each metre of it. */
  readonly fill: number;
  readonly corrodes: boolean;
  readonly tableLoss: Maybe;
  readonly loss: Maybe;
  readonly wallLeft: Maybe;
  readonly materialLeft: Maybe;
  readonly inertiaLeft: Maybe;
  /** Diameter over wall of a pipe of steel, half width over thickness of another section's flange; zero of what has neither. */
  readonly slenderness: Maybe;
  readonly leastWall: number;
}

/** Works out the section, new and after the loss of EN 1993-5. */
export function sectionOf(inputs: Inputs): Section {
  const kind = inputs.text('pile.pile_kind');
  const material = inputs.text('pile.material');
  const size = inputs.number('pile.D') / 1000;
  const wall = inputs.number('pile.t') / 1000;
  const isOpen = kind === 'open pipe';
  const isPipe = isOpen || kind === 'closed pipe';
  const isStated = kind === 'stated';
  const inside = isPipe ? size - 2 * wall : 0;
  const stated = {
    perimeter: inputs.maybe('pile.p_in'),
    gross: inputs.maybe('pile.A_b_in'),
    material: withAll([inputs.maybe('pile.A_m_in')], (area) => area / 1e6),
    inertia: withAll([inputs.maybe('pile.I_in')], (inertia) => inertia / 1e12),
  };
  const shape = shapes[kind];
  const gross = inputs.stated('pile.A_g') ?? (shape ? shape.area * size ** 2 : stated.gross);
  const plug = isOpen ? (Math.PI / 4) * inside ** 2 : 0;
  const area = isPipe ? (Math.PI / 4) * (size ** 2 - inside ** 2) : isStated ? stated.material : gross;
  const lossStated = withAll([inputs.stated('pile.c_o')], (mm) => mm / 1000);
  const weightOfMaterial = inputs.number(material === 'steel' ? 'pile.γ_st' : 'pile.γ_con');
  const corrodes = isPipe && material === 'steel';
  const tableLoss = withAll(
    [between(corrosion[inputs.text('pile.zone')] ?? [], inputs.number('pile.life'))],
    (mm) => mm / 1000,
  );
  const loss = lossStated ?? (corrodes ? tableLoss : 0);
  const wallLeft = isPipe
    ? withAll([loss], (outside) => leftOf(wall, outside + inputs.number('pile.c_i') / 1000))
    : 0;
  // Both are of a ring: of the outside diameter that is left, and the wall that is left.
  const ring = (formula: (outer: number, inner: number) => number): Maybe =>
    withAll([loss, wallLeft], (outside, left) => formula(size - 2 * outside, size - 2 * outside - 2 * left));
  // Every face of a section of steel other than a pipe loses what the table gives; a pipe, its outside and what is entered.
  const faceLoss = material === 'steel' ? tableLoss : 0;
  const wallSlenderness = withAll([loss, wallLeft], (outside, left) =>
    left > 0 ? (size - 2 * outside) / left : null,
  );
  return {
    isPipe,
    isOpen,
    displacesLittle: isOpen || isStated,
    inside,
    perimeter: inputs.stated('pile.p_o') ?? (shape ? shape.perimeter * size : stated.perimeter),
    insidePerimeter: isOpen ? Math.PI * inside : 0,
    gross,
    plug,
    ring: withAll([gross], (whole) => whole - plug),
    material: area,
    displacing: isOpen || isStated ? area : gross,
    weightOfMaterial,
    weight: inputs.stated('pile.w') ?? withAll([area], (left) => left * weightOfMaterial),
    fill: isPipe && !isOpen ? (Math.PI / 4) * inside ** 2 * inputs.number('pile.γ_B') : 0,
    corrodes,
    tableLoss,
    loss,
    wallLeft,
    materialLeft: isPipe
      ? ring((outer, inner) => (Math.PI / 4) * (outer ** 2 - inner ** 2))
      : isStated
        ? withAll([area, faceLoss], (whole, face) => leftOf(whole, inputs.number('pile.p_c') * face))
        : area,
    slenderness:
      material !== 'steel' ? 0 : isPipe ? wallSlenderness : isStated ? inputs.number('pile.λ_f') : 0,
    inertiaLeft: isPipe
      ? ring((outer, inner) => (Math.PI / 64) * (outer ** 4 - inner ** 4))
      : shape
        ? shape.inertia * size ** 4
        : stated.inertia,
    leastWall: corrodes ? 0.00635 + size / 100 : 0,
  };
}

/** What a loss leaves: nothing where it takes all but what rounding leaves. */
function leftOf(whole: number, loss: number): number {
  return whole - loss > 1e-12 * whole ? whole - loss : 0;
}

const side = Math.SQRT2 - 1;
const circle = { perimeter: Math.PI, area: Math.PI / 4, inertia: Math.PI / 64 };
/** Perimeter, area and second moment of area of an outline of size one; an octagon across flats. */
const shapes: Readonly<Record<string, { perimeter: number; area: number; inertia: number }>> = {
  'open pipe': circle,
  'closed pipe': circle,
  round: circle,
  square: { perimeter: 4, area: 1, inertia: 1 / 12 },
  octagon: { perimeter: 8 * side, area: 2 * side, inertia: ((11 + 8 * Math.SQRT2) / 12) * side ** 4 },
};

/** What the pile can bear as a member, kPa and m. */
export interface Member {
  readonly modulus: number;
  readonly gyration: Maybe;
  readonly shareOfYield: number;
  readonly concrete: number;
  /** In ground at rest, and where an earthquake has taken what liquefies from it. */
  readonly atRest: Column;
  readonly shaken: Column & {
    /** The length of ground that holds the pile, where that begins, and how much of it the pile must reach. */
    readonly reach: Maybe;
    readonly from: Maybe;
    readonly wanted: Maybe;
  };
}

/** The pile as a column: AISC 360 E3 of steel, Euler of concrete. */
export interface Column {
  readonly fixity: Maybe;
  readonly effective: Maybe;
  readonly euler: Maybe;
  readonly column: Maybe;
  readonly steel: Maybe;
  readonly allowed: Maybe;
  readonly buckling: Maybe;
}

/** AASHTO LRFD 10.7.3.13.4 for fixity, AISC 360 E3 for columns of steel, Euler for those of concrete. */
export function memberOf(inputs: Inputs, section: Section, free: Maybe, layers: readonly Layer[]): Member {
  const isSteel = inputs.text('pile.material') === 'steel';
  const isFactored = inputs.text('loads.basis') === 'LRFD';
  const modulus = 1000 * inputs.number(isSteel ? 'loads.E_s' : 'loads.E_c');
  const yieldStress = 1000 * inputs.number('loads.f_y');
  const strength = 1000 * inputs.number("loads.f'_c");
  const prestress = 1000 * inputs.number('loads.f_pe');
  const { inertiaLeft, materialLeft } = section;
  const gyration = withAll([inertiaLeft, materialLeft], (inertia, area) => Math.sqrt(inertia / area));
  const shareOfYield = inputs.stated('loads.k_y') ?? (isFactored ? 0.6 : 0.25);
  const concrete = isFactored
    ? 0.75 * 0.8 * (0.85 * strength - 0.6 * prestress)
    : 0.33 * strength - 0.27 * prestress;
  // The characteristic length of a pile in ground of one stiffness, and of one that grows with depth.
  const characteristic = (ground: 'clay' | 'sand', clay: string, sand: string): Maybe =>
    withAll([inertiaLeft], (inertia) =>
      ground === 'clay'
        ? ((modulus * inertia) / (67 * inputs.number(clay))) ** (1 / 4)
        : ((modulus * inertia) / inputs.number(sand)) ** (1 / 5),
    );
  const toFixity = { clay: 1.4, sand: 1.8 };
  const kind = (name: string): 'clay' | 'sand' => (inputs.text(name) === 'clay' ? 'clay' : 'sand');
  const below = kind('loads.fix_e');
  const rest = withAll(
    [characteristic(kind('loads.fix'), 'loads.s_uf', 'loads.n_h')],
    (length) => toFixity[kind('loads.fix')] * length,
  );
  const long = characteristic(below, 'loads.s_ufe', 'loads.n_he');
  const reach = withAll([long], (length) => toFixity[below] * length);
  const fixityAtRest = inputs.stated('loads.L_f') ?? rest;
  const from = heldFrom(layers, fixityAtRest, reach);
  const columnOf = (fixity: Maybe): Column => {
    const effective = withAll([fixity, free], (down, above) => inputs.number('loads.K_e') * (above + down));
    const euler = withAll([effective, gyration], (length, radius) =>
      radius > 0 ? (Math.PI ** 2 * modulus) / (length / radius) ** 2 : null,
    );
    const column = withAll([euler], (stress) =>
      yieldStress / stress <= 2.25 ? 0.658 ** (yieldStress / stress) * yieldStress : 0.877 * stress,
    );
    const steel = withAll([column], (stress) =>
      Math.min(shareOfYield * yieldStress, isFactored ? 0.9 * stress : stress / 1.67),
    );
    return {
      fixity,
      effective,
      euler,
      column,
      steel,
      allowed: isSteel ? steel : concrete,
      buckling: isSteel ? column : withAll([euler], (stress) => stress / inputs.number('loads.n_b')),
    };
  };
  const atRest = columnOf(fixityAtRest);
  const shaken = columnOf(sumOf([from, reach]));
  const lesser = (one: Maybe, other: Maybe): Maybe => withAll([one, other], (a, b) => Math.min(a, b));
  return {
    modulus,
    gyration,
    shareOfYield,
    concrete,
    atRest,
    shaken: {
      ...shaken,
      // An earthquake never leaves a pile more than it bears at rest.
      allowed: lesser(shaken.allowed, atRest.allowed),
      buckling: lesser(shaken.buckling, atRest.buckling),
      reach,
      from,
      // Davisson and Robinson: of piles longer than four characteristic lengths.
      wanted: withAll([long], (length) => 4 * length),
    },
  };
}
