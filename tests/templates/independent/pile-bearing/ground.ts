import { type Inputs, type Maybe, numberIn, type Row, sumOf, textIn, withAll } from './inputs.ts';

/** The levels and lengths of a pile, m; depths are below depth zero, downwards. */
export interface Lengths {
  readonly mudline: number;
  readonly zero: number;
  readonly lost: number;
  /** Depth of the tip and height of the cut-off, whatever their signs. */
  readonly tip: Maybe;
  readonly head: Maybe;
  readonly embedded: Maybe;
  readonly free: Maybe;
  readonly whole: Maybe;
  /** Depth of high water, which the stress in the ground and the weight in uplift follow. */
  readonly water: Maybe;
  /** Depth of low water, which the weight in compression follows. */
  readonly low: Maybe;
}

/** A wide surcharge is carried by the soil alone; one that may be taken away is not there when the ground must resist. */
export function keptSurcharge(inputs: Inputs): number {
  return inputs.text('pile.s_is') === 'permanent' ? inputs.number('pile.σ_s') : 0;
}

/** Reads a level such as `El. -12.5 m`, or a plain number of metres. */
export function level(inputs: Inputs, name: string): number {
  return Number(
    inputs
      .text(name)
      .replace(/^El\. /, '')
      .replace(/ m$/, ''),
  );
}

/** Depth zero is the mudline after dredging, overdredge and scour, or the top of the layers where lengths are entered. */
export function lengthsOf(inputs: Inputs): Lengths {
  const bed = level(inputs, 'pile.El_bed');
  const dredged = level(inputs, 'pile.El_dr') - inputs.number('pile.d_over');
  const mudline = Math.min(bed, dredged) - inputs.number('pile.d_sc');
  const byLevels = inputs.text('pile.z_by') === 'levels';
  const zero = byLevels ? mudline : bed;
  const tip = byLevels ? zero - level(inputs, 'pile.El_tip') : inputs.maybe('pile.L_in');
  const head = byLevels ? level(inputs, 'pile.El_cut') - zero : inputs.maybe('pile.L_fr_in');
  // A tip above the ground or a head below it is no pile. Of the last bits of a length nobody can say where they lie.
  const embedded = tip !== null && tip > 0 ? tip : null;
  const free = withAll([tip, head], (down, up) =>
    up < -1e-9 * Math.max(1, Math.abs(down)) ? null : Math.max(0, up),
  );
  const low = byLevels ? zero - level(inputs, 'pile.El_w') : inputs.maybe('pile.z_w_in');
  return {
    mudline,
    zero,
    lost: bed - zero,
    tip,
    head,
    embedded,
    free,
    whole: withAll([embedded, free], (down, up) => down + up),
    water: withAll([low], (depth) => depth - inputs.number('pile.d_w')),
    low,
  };
}

/** A layer of soil as it lies below depth zero: m, kN/m³, kPa. */
export interface Layer {
  readonly row: Row;
  readonly isClay: boolean;
  /** Top as logged, negative in ground that is lost. */
  readonly logged: number;
  readonly top: number;
  readonly bottom: number;
  readonly unitWeight: number;
  readonly water: number;
  readonly totalAbove: number;
  readonly effectiveAbove: Maybe;
  readonly effectiveBelow: Maybe;
}

/** Lays the layers from depth zero down, and sums stresses; water above depth zero adds nothing to them. */
export function layersOf(inputs: Inputs, { lost, water }: Lengths): readonly Layer[] {
  const layers: Layer[] = [];
  const surcharge = keptSurcharge(inputs);
  for (const row of inputs.layers) {
    const above = layers.at(-1);
    const logged = above ? above.logged + thickness(above.row) : -lost;
    const top = Math.max(0, logged);
    const bottom = Math.max(0, logged + thickness(row));
    const unitWeight = numberIn(row, 'γ') ?? Number.NaN;
    const still = textIn(row, 'γ_is') === 'total' ? 1 : 0;
    // Water that flows up pulls the grains along by i γ_w.
    const wet = (still + gradientIn(row)) * inputs.number('pile.γ_w');
    const effectiveAbove = above ? above.effectiveBelow : surcharge;
    const part = {
      row,
      isClay: textIn(row, 'soil') === 'clay',
      logged,
      top,
      bottom,
      unitWeight,
      water: wet,
      totalAbove: above ? above.totalAbove + above.unitWeight * (above.bottom - above.top) : surcharge,
      effectiveAbove,
    };
    layers.push({ ...part, effectiveBelow: effectiveStress(part, bottom, water) });
  }
  return layers;
}

/** The thickness of a layer as logged. */
export function thickness(row: Row): number {
  return numberIn(row, 'h') ?? Number.NaN;
}

/** The head that water loses on its way up through a layer, by the length of the way. */
function gradientIn(row: Row): number {
  return numberIn(row, 'i_w') ?? 0;
}

/** The head above still water at a depth: what the layers above it hold back. */
export function headAt(layers: readonly Layer[], water: Maybe, depth: number): Maybe {
  return sumOf(
    layers.map(({ row, top, bottom }) =>
      withAll([water], (level) => {
        const way = Math.min(depth, bottom) - Math.max(top, level);
        return way > 0 ? gradientIn(row) * way : 0;
      }),
    ),
  );
}

/** σ'_v = Σ γ Δz - u at a depth of a layer. */
export function effectiveStress(layer: Omit<Layer, 'effectiveBelow'>, depth: number, water: Maybe): Maybe {
  const { top, unitWeight, water: deducted, effectiveAbove } = layer;
  return withAll(
    [effectiveAbove, water],
    (above, level) =>
      above + unitWeight * (depth - top) - deducted * Math.max(0, depth - Math.max(top, level)),
  );
}

/** Σ γ Δz at a depth of a layer. */
export function totalStress({ totalAbove, unitWeight, top }: Layer, depth: number): number {
  return totalAbove + unitWeight * (depth - top);
}

/** The undrained strength at the logged top of a clay, none in a sand. */
export function strengthAtTop({ isClay, row }: Layer): Maybe {
  return isClay ? numberIn(row, 's_u1') : 0;
}

/** The gain of strength with depth: a straight line between the logged top and bottom. */
export function gainOfStrength({ isClay, row }: Layer): Maybe {
  if (!isClay) return 0;
  return withAll([numberIn(row, 's_u1'), numberIn(row, 's_u2')], (first, last) =>
    thickness(row) > 0 ? (last - first) / thickness(row) : null,
  );
}

/** The undrained strength at a depth. */
export function strengthAt(layer: Layer, depth: number): Maybe {
  return withAll(
    [strengthAtTop(layer), gainOfStrength(layer)],
    (first, gain) => first + gain * (depth - layer.logged),
  );
}

/** Rounding of levels and thicknesses may part two depths that are the same. */
export const same = 1e-9;

/** A layer no thicker than a hundredth of a foot along the pile is none. */
export const seam = 0.01 * 0.3048;

/** The layer of a depth: on a boundary the one above. Undefined above the first and below the last. */
export function layerAt(layers: readonly Layer[], depth: number): number | undefined {
  if (depth <= 0) return undefined;
  const found = layers.findIndex(({ top, bottom }) => bottom > top && depth <= bottom + same);
  return found < 0 ? undefined : found;
}

/** Sand of which an assessment says that it liquefies: it gives nothing. */
export function liquefies({ row, isClay }: Pick<Layer, 'row' | 'isClay'>): boolean {
  return !isClay && textIn(row, 'lq') === 'liquefies';
}

/**
 * As if the mudline lay below what liquefies, as long as that lies within the depth to fixity: from the mudline that at rest,
 * from the bottom of such sand that of the ground below it.
 */
export function heldFrom(layers: readonly Layer[], atRest: Maybe, shaken: Maybe): Maybe {
  let from: Maybe = 0;
  for (const { top, bottom } of layers.filter(liquefies)) {
    if (bottom - top <= seam) continue;
    from = withAll([from, from === 0 ? atRest : shaken], (start, reach) =>
      top < start + reach ? bottom : start,
    );
  }
  return from;
}

/** The depth of the last layer. */
export function endOf(layers: readonly Layer[]): number {
  return layers.at(-1)?.bottom ?? 0;
}

/** The depth at which stress in sand is held, and the effective stress there. */
export function heldAt(
  inputs: Inputs,
  layers: readonly Layer[],
  water: Maybe,
): { readonly depth: number; readonly stress: Maybe; readonly total: Maybe; readonly pressure: Maybe } {
  const depth = inputs.stated('pile.z_c') ?? endOf(layers);
  const layer = layers[layerAt(layers, depth) ?? -1];
  const stress = layer ? effectiveStress(layer, depth, water) : null;
  const total = layer ? totalStress(layer, depth) : null;
  return { depth, stress, total, pressure: withAll([total, stress], (all, effective) => all - effective) };
}

/** The stress that friction and base follow: in sand it is held below that depth. */
export function followedStress(
  layer: Layer,
  depth: number,
  water: Maybe,
  held: { readonly depth: number; readonly stress: Maybe },
): Maybe {
  return !layer.isClay && depth > held.depth ? held.stress : effectiveStress(layer, depth, water);
}

/** Mean of a quantity over slices that end at the tip. */
export function meanOver(parts: readonly (readonly [Maybe, number])[], length: Maybe): Maybe {
  return withAll(
    [sumOf(parts.map(([value, part]) => withAll([value], (one) => one * part))), length],
    (sum, whole) => (whole > 0 ? sum / whole : null),
  );
}
