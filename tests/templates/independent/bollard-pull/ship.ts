import type { Worked } from '../program.ts';
import { type Entries, notNegative, positive } from './entries.ts';
import { judge } from './verdicts.ts';

/** The least block coefficient a ship is taken to have: common practice. */
const finest = 0.2;

/** The moored ship: m, m², m³, t, kg/m³. */
export interface Ship {
  readonly between: number;
  readonly waterline: number;
  readonly breadth: number;
  readonly draught: number;
  readonly depth: number;
  readonly displacement: number;
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
  const sideArea = isBare ? between * freeboard : notNegative(number('ship.A_Ls'));
  const frontArea = isBare ? breadth * freeboard : notNegative(number('ship.A_Ts'));
  const ship: Ship = {
    between,
    breadth,
    draught,
    depth,
    density,
    displacement,
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
  { between, waterline, breadth, draught, volume, midship, sideArea, frontArea }: Ship,
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
    'ship.c_fine': judge(finest, block),
    'ship.c_area': judge(frontArea, sideArea),
  };
}
