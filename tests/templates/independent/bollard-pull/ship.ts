import type { Verdict, Worked } from '../program.ts';
import { type Entries, notNegative, positive } from './entries.ts';
import { type ShipKind, shipKinds } from './published.ts';
import { judge, refused } from './verdicts.ts';

/** The moored ship: m, m², m³, t, kg/m³. */
export interface Ship {
  readonly between: number;
  readonly waterline: number;
  readonly breadth: number;
  readonly draught: number;
  readonly depth: number;
  readonly displacement: number;
  /** Fully laden, t. */
  readonly laden: number;
  readonly kind: ShipKind;
  readonly tonnage: number;
  readonly midship: number;
  readonly sideArea: number;
  readonly frontArea: number;
  readonly density: number;
  readonly viscosity: number;
  readonly gravity: number;
  readonly volume: number;
}

/** Reads the ship, and works out what follows from her particulars alone. */
export function workShip({ number, text }: Entries): { readonly ship: Ship; readonly worked: Worked } {
  const [between, breadth, draught, depth] = [
    number('ship.LBP'),
    number('ship.B'),
    number('ship.T'),
    number('ship.d'),
  ];
  const density = positive(number('ship.ρ_w'));
  const displacement = positive(number('ship.Δ'));
  const volume = (displacement * 1000) / density;
  const isBare = text('ship.areas') === 'bare hull';
  const freeboard = notNegative(number('ship.D_m') - draught);
  const kind = shipKinds[text('ship.kind')];
  if (!kind) throw new Error('the kind of ship was not drawn');
  const sideArea = isBare ? between * freeboard : notNegative(number('ship.A_Ls'));
  const frontArea = isBare ? breadth * freeboard : notNegative(number('ship.A_Ts'));
  const ship: Ship = {
    between,
    breadth,
    draught,
    depth,
    density,
    displacement,
    laden: positive(number('ship.Δ_f')),
    kind,
    volume,
    sideArea,
    frontArea,
    waterline: number('ship.L_wL'),
    tonnage: number('ship.GT'),
    midship: number('ship.C_m'),
    viscosity: number('ship.ν'),
    gravity: number('ship.g_n'),
  };
  const block = volume / (between * breadth * draught);
  return {
    ship,
    worked: {
      'ship.afloat': judge(draught, depth),
      'ship.r_d': depth / draught,
      'ship.V_d': volume,
      'ship.C_B': block,
      ...relate({ overAll: number('ship.LOA'), hullDepth: number('ship.D_m'), block }, ship),
      ...workAreas({ overAll: number('ship.LOA'), freeboard }, ship),
      'ship.A_L': sideArea,
      'ship.A_T': frontArea,
      'ship.A_Tb': frontArea,
    },
  };
}

/** How the particulars of one ship go together: no hull is shorter than its waterline or fuller than its midship section. */
function relate(
  {
    overAll,
    hullDepth,
    block,
  }: { readonly overAll: number; readonly hullDepth: number; readonly block: number },
  {
    between,
    waterline,
    breadth,
    draught,
    volume,
    midship,
    sideArea,
    frontArea,
    displacement,
    laden,
    kind,
    density,
  }: Ship,
): Worked {
  const [longer, shorter] = [Math.max(between, waterline), Math.min(between, waterline)];
  const fullest = midship * breadth * draught * longer;
  return {
    'ship.c_LOA': judge(longer, overAll),
    'ship.c_B': judge(breadth, shorter),
    'ship.c_T': judge(draught, breadth),
    'ship.c_D': judge(draught, hullDepth),
    'ship.C_p': volume / fullest,
    'ship.c_full': judge(volume, fullest),
    'ship.C_n': kind.finest,
    'ship.C_x': kind.fullest,
    'ship.C_w': kind.wind,
    'ship.b_t': kind.isAsTanker ? 1 : 0,
    'ship.c_fine': judge(kind.finest, block),
    'ship.c_stout': judge(block, kind.fullest),
    'ship.c_laden': judge(displacement, laden),
    // The box about her hull up to her deck, filled as her kind fills it.
    'ship.c_deck': judge(laden, (kind.fullest * density * between * breadth * hullDepth) / 1000),
    'ship.c_area': judge(frontArea, sideArea),
  };
}

/** What is above water, m²: a bare hull and what her kind has on it at least, and no more than ships of her size carry. */
function workAreas(
  { overAll, freeboard }: { readonly overAll: number; readonly freeboard: number },
  ship: Ship,
): Worked {
  const { between, breadth, sideArea, frontArea, kind } = ship;
  const [side, front] = [between * freeboard, breadth * freeboard];
  // A twentieth for a round hull and for figures.
  const [leastSide, leastFront] = [leastSideArea(ship, freeboard), 0.95 * front];
  const atLeast = (least: number, area: number): Verdict =>
    Number.isNaN(least + area) ? refused : least === 0 ? { verdict: 'holds' } : judge(least, area);
  return {
    'ship.A_Lh': side,
    'ship.A_Th': front,
    'ship.C_s': kind.onDeck,
    'ship.A_Ln': leastSide,
    'ship.c_AL': atLeast(leastSide, sideArea),
    'ship.c_AT': atLeast(leastFront, frontArea),
    'ship.c_ALx': judge(sideArea, 1.5 * overAll * breadth),
    'ship.c_ATx': judge(frontArea, 2.5 * breadth ** 2),
  };
}

/** The least area that a ship of her kind shows from abeam, m²: hull with a twentieth off, and what stands on its deck. */
export function leastSideArea({ between, breadth, kind }: Ship, freeboard: number): number {
  return between * (0.95 * freeboard + kind.onDeck * breadth);
}
