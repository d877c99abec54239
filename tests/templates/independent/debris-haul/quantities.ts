import type { Drawn, Verdict, Worked } from '../program.ts';
import { above, cell, exceeds, num, part, rowsOf, sum, text, up, within } from './arithmetic.ts';
import { type Material, materialOf } from './volumes.ts';

/** An item of the takeoff: volumes in m³ of their state, masses in t. */
export interface Item {
  readonly name: string;
  readonly kind: string;
  readonly volume: number;
  readonly area: number;
  readonly bank: number;
  readonly looseDensity: number;
  readonly mass: number;
  readonly loose: number;
  /** Lines of breaking that name it. */
  readonly lines: number;
  readonly hauled: number;
  readonly hauledBank: number;
  readonly hauledMass: number;
}

/** What the other sheets need of the quantities. */
export interface Quantities {
  readonly items: readonly Item[];
  readonly area: number;
  readonly bank: number;
  readonly mass: number;
  readonly loose: number;
  readonly hauled: number;
  readonly hauledMass: number;
  /** Loose over bank volume of what is hauled. */
  readonly swollen: number;
  /** The greatest loose density among the items, in kg/lcm. */
  readonly heaviest: number;
  readonly steelRecovered: number;
  readonly disposalFees: number;
  readonly recyclingCharges: number;
  /** Charges below zero, as an amount above it. */
  readonly recyclingCredits: number;
  /** The largest part of an item's volume that is reinforcement, and of its mineral mass that is recycled. */
  readonly mostBars: number;
  readonly mostRecycled: number;
  readonly worked: Worked;
}

/** Quantities of the takeoff, by item and in all. */
export function workQuantities(drawn: Drawn): Quantities {
  const { lines } = drawn;
  const area = num(lines['quantity.L_w']) * num(lines['quantity.B_w']);
  const body = num(lines['haul.V_k']) * part(lines['haul.F_k']);
  const payload = num(lines['haul.P']);
  const gravity = num(lines['basis.g'], 9.80665);
  const steel = num(lines['basis.ρ_s']);
  const recoveredShare = part(lines['quantity.R_s']);
  const least = part(lines['quantity.a_min']);
  const materials = rowsOf(drawn, 'swell.materials').map((row) => materialOf(row, gravity));
  const broken = rowsOf(drawn, 'breaking.works').map((row) => text(row.item));

  const layers = rowsOf(drawn, 'quantity.takeoff').map((row) => {
    const from = text(row.from, 'area');
    const own = from === 'area' ? above(num(row.area)) : area;
    const measured = from === 'volume' ? num(row.V_s) : (own * above(num(row.thick))) / 1000;
    const deducted = num(row.V_d, 0);
    // No more can be taken off than is there.
    const left = exceeds(deducted, measured) ? Number.NaN : measured - deducted;
    const volume = left * (1 + part(row.w, 0));
    const { kind, bank, loose, recycled, thinnest, disposalFee, recyclingCharge } = the(
      materials,
      text(row.material),
    );
    const mass = (volume * bank) / 1000;
    const bars = text(row.s_by, 'mass') === 'part' ? part(row.s_p, 0) * steel : num(row.s_s, 0);
    const steelMass = (volume * bars) / 1000;
    // The density is that of the reinforced material: bars heavier than all of it cannot be.
    const mineral = exceeds(steelMass, mass) ? Number.NaN : mass - steelMass;
    const off = part(row.off, 1);
    const recycledMass = off * mineral * recycled;
    const disposed = off * (mineral * (1 - recycled) + steelMass * (1 - recoveredShare));
    const byVolume = (volume * loose * off) / body;
    const byWeight = (mass * off) / payload;
    return {
      name: text(row.item),
      kind,
      from,
      area: own,
      measured,
      volume,
      beside:
        from === 'volume' && typeof row.area === 'number' && typeof row.thick === 'number'
          ? (row.area * row.thick) / 1000
          : 0,
      // What is spread over no area has no thickness.
      thickness: volume / above(own),
      thinnest: thinnest * 1000,
      // A volume that is stated may be of any shape.
      overThinnest: from === 'volume' ? 1 : num(row.thick, 0) / 1000 / thinnest,
      overSmallest: volume / above(least * area * thinnest),
      bank: volume,
      density: bank,
      mass,
      factor: loose,
      looseDensity: bank / loose,
      loose: volume * loose,
      bars,
      steelMass,
      mineral,
      recycled,
      recycledMass,
      disposed,
      hauled: volume * loose * off,
      hauledBank: volume * off,
      hauledMass: mass * off,
      byVolume,
      byWeight,
      governs: Number.isNaN(byVolume + byWeight) ? null : exceeds(byWeight, byVolume) ? 'weight' : 'volume',
      loads: up(Math.max(byVolume, byWeight)),
      disposalFee,
      recyclingCharge,
      fee: disposed * disposalFee,
      charge: recycledMass * recyclingCharge,
      lines: broken.filter((name) => name === text(row.item)).length,
    };
  });
  type Layer = (typeof layers)[number];
  type Key = { [K in keyof Layer]: Layer[K] extends number ? K : never }[keyof Layer];
  const column = (key: Key) => layers.map((layer) => cell(layer[key]));
  const total = (key: Key) => sum(layers.map((layer) => layer[key]));
  const isKnown = layers.every(({ kind }) => kind !== '');
  const counted = (holds: (layer: Layer) => boolean) => (isKnown ? layers.filter(holds).length : Number.NaN);

  const hauled = total('hauled');
  const hauledMass = total('hauledMass');
  const mass = total('mass');
  const swollen = hauled / total('hauledBank');
  const present = layers.filter((layer) => layer.loose !== 0);
  const heaviest =
    present.length > 0 && layers.every((layer) => layer.loose >= 0 && layer.looseDensity > 0)
      ? Math.max(...present.map(({ looseDensity }) => looseDensity))
      : Number.NaN;
  const bars = total('steelMass');
  const smaller = layers.some(({ measured }) => Number.isNaN(measured))
    ? Number.NaN
    : layers.filter(({ beside, measured }) => exceeds(beside, measured)).length;
  // What is not known of one item is not known of their number.
  const feeless =
    counted(({ disposed, disposalFee }) => disposed > 0 && disposalFee === 0) + 0 * total('disposed');
  const chargeless =
    counted(({ recycledMass, recyclingCharge }) => recycledMass > 0 && recyclingCharge === 0) +
    0 * total('recycledMass');
  const empty = layers.filter(({ volume }) => volume === 0).length + 0 * total('volume');
  const ofItems = (verdict: Verdict): Verdict =>
    layers.length === 0 ? { verdict: 'does not apply' } : verdict;
  const table = 'quantity.takeoff';
  const worked: Record<string, Worked[string]> = {
    'quantity.A': cell(area),
    [`${table}.A_l`]: column('area'),
    [`${table}.V_m`]: column('measured'),
    [`${table}.V_a`]: column('beside'),
    [`${table}.V`]: column('volume'),
    [`${table}.h_m`]: layers.map(({ thickness }) => cell(thickness * 1000)),
    [`${table}.h_n`]: column('thinnest'),
    [`${table}.k_h`]: column('overThinnest'),
    [`${table}.k_V`]: column('overSmallest'),
    [`${table}.V_b`]: column('bank'),
    [`${table}.ρ_b`]: column('density'),
    [`${table}.M`]: column('mass'),
    [`${table}.f`]: column('factor'),
    [`${table}.ρ_l`]: column('looseDensity'),
    [`${table}.V_l`]: column('loose'),
    [`${table}.ρ_r`]: column('bars'),
    [`${table}.M_s`]: column('steelMass'),
    [`${table}.M_m`]: column('mineral'),
    [`${table}.R`]: layers.map(({ recycled }) => cell(recycled * 100)),
    [`${table}.M_r`]: column('recycledMass'),
    [`${table}.M_d`]: column('disposed'),
    [`${table}.V_h`]: column('hauled'),
    [`${table}.M_h`]: column('hauledMass'),
    [`${table}.N_v`]: column('byVolume'),
    [`${table}.N_w`]: column('byWeight'),
    [`${table}.governs`]: layers.map(({ governs }) => governs),
    [`${table}.n_l`]: column('loads'),
    [`${table}.c_d`]: column('disposalFee'),
    [`${table}.c_r`]: column('recyclingCharge'),
    [`${table}.K_d`]: column('fee'),
    [`${table}.K_r`]: column('charge'),
    [`${table}.kind`]: layers.map(({ kind }) => (kind === '' ? null : kind)),
    [`${table}.n_w`]: column('lines'),
    'quantity.V_bt': cell(total('bank')),
    'quantity.M_t': cell(mass),
    'quantity.V_lt': cell(total('loose')),
    'quantity.V_ht': cell(hauled),
    'quantity.M_ht': cell(hauledMass),
    'quantity.N_t': cell(total('loads')),
    'quantity.f_a': cell(swollen),
    'quantity.ρ_a': cell((hauledMass * 1000) / hauled),
    'quantity.ρ_g': cell(heaviest),
    'quantity.N_s': cell(layers.filter(({ from }) => from === 'whole strip').length),
    'quantity.N_r': cell(
      counted(({ kind, bars: own }) => kind === 'concrete' && own === 0) +
        0 * sum(layers.map(({ bars: own }) => own)),
    ),
    'quantity.N_d': cell(feeless),
    'quantity.c_f': ofItems(none(feeless)),
    'quantity.N_q': cell(chargeless),
    'quantity.c_q': ofItems(none(chargeless)),
    'quantity.N_z': cell(empty),
    'quantity.c_z': ofItems(none(empty)),
    'quantity.c_th': ofItems(none(below(layers.map(({ overThinnest }) => [overThinnest, 1])))),
    'quantity.c_sm': ofItems(none(below(layers.map(({ overSmallest }) => [overSmallest, 1])))),
    'quantity.N_i': layers.length,
    'quantity.c_i': within(1, layers.length),
    'quantity.N_a': cell(smaller),
    'quantity.c_Va': layers.length === 0 ? { verdict: 'does not apply' } : none(smaller),
    'quantity.M_st': cell(bars),
    'quantity.M_sr': cell(bars * recoveredShare),
    'quantity.M_cr': cell(
      sum(layers.map(({ kind, recycledMass }) => (kind === 'concrete' ? 1 : 0) * recycledMass)),
    ),
    'quantity.M_rt': cell(total('recycledMass')),
    'quantity.M_dt': cell(total('disposed')),
    'quantity.R_t': cell(100 * (1 - total('disposed') / mass)),
  };
  return {
    items: layers,
    area,
    bank: total('bank'),
    mass,
    loose: total('loose'),
    hauled,
    hauledMass,
    swollen,
    heaviest,
    steelRecovered: bars * recoveredShare,
    disposalFees: total('fee'),
    recyclingCharges: total('charge'),
    recyclingCredits: sum(layers.map(({ charge }) => Math.max(0, -charge))),
    mostBars: Math.max(0, ...layers.map((layer) => layer.bars)) / steel,
    mostRecycled: Math.max(0, ...layers.map((layer) => layer.recycled)),
    worked,
  };
}

const unknown: Material = {
  name: '',
  kind: '',
  hasSource: false,
  bank: Number.NaN,
  loose: Number.NaN,
  recycled: Number.NaN,
  swellsTo: Number.NaN,
  weighs: Number.NaN,
  swellsFrom: Number.NaN,
  weighsTo: Number.NaN,
  recyclable: Number.NaN,
  thinnest: Number.NaN,
  disposalFee: Number.NaN,
  recyclingCharge: Number.NaN,
};

/** The one material of that name; of none or of several nothing is known. */
function the(materials: readonly Material[], name: string): Material {
  const [found, other] = materials.filter((material) => material.name === name);
  return found && !other ? found : unknown;
}

/** The list of materials by itself. */
export function workMaterials(drawn: Drawn): Worked {
  const gravity = num(drawn.lines['basis.g'], 9.80665);
  const materials = rowsOf(drawn, 'swell.materials').map((row) => materialOf(row, gravity));
  const table = 'swell.materials';
  return {
    [`${table}.ρ_b`]: materials.map(({ bank }) => cell(bank)),
    [`${table}.f`]: materials.map(({ loose }) => cell(loose)),
    [`${table}.S`]: materials.map(({ loose }) => cell(100 * (loose - 1))),
    [`${table}.LF`]: materials.map(({ loose }) => cell(1 / loose)),
    [`${table}.ρ_l`]: materials.map(({ bank, loose }) => cell(bank / loose)),
    [`${table}.f_x`]: materials.map(({ swellsTo }) => cell(swellsTo)),
    [`${table}.ρ_n`]: materials.map(({ weighs }) => cell(weighs)),
    [`${table}.f_n`]: materials.map(({ swellsFrom }) => cell(swellsFrom)),
    [`${table}.ρ_x`]: materials.map(({ weighsTo }) => cell(weighsTo)),
    [`${table}.R_x`]: materials.map(({ recyclable }) => cell(recyclable * 100)),
    [`${table}.h_n`]: materials.map(({ thinnest }) => cell(thinnest * 1000)),
    'swell.c_f': none(below(materials.map(({ loose, swellsFrom }) => [loose, swellsFrom]))),
    'swell.c_ρ': none(below(materials.map(({ bank, weighsTo }) => [weighsTo, bank]))),
    'swell.N_k': materials.filter(({ kind, hasSource }) => kind === 'other' && !hasSource).length,
    'swell.c_k': none(materials.filter(({ kind, hasSource }) => kind === 'other' && !hasSource).length),
    'swell.c_R': none(below(materials.map(({ recycled, recyclable }) => [recyclable, recycled]))),
  };
}

/** That none of the counted is there. */
export function none(found: number): Verdict {
  if (Number.isNaN(found)) return { verdict: 'refused' };
  return { verdict: found > 0 ? 'fails' : 'holds' };
}

/** How many of the first are below the second; not known where one of them is not. */
export function below(pairs: readonly (readonly [number, number])[]): number {
  if (pairs.some(([first, second]) => Number.isNaN(first + second))) return Number.NaN;
  return pairs.filter(([first, second]) => exceeds(second, first)).length;
}
