import type { Cell, Drawn, Random } from '../program.ts';
import { currentCurves, shipKinds, windCurves } from './published.ts';

type Lines = Readonly<Record<string, Cell>>;

/** The size of a ship, m: length between perpendiculars, breadth, draught. */
export interface Size {
  readonly length: number;
  readonly breadth: number;
  readonly draught: number;
}

/** Draws a size from a small coaster to the largest tanker. */
export function shipSize(random: Random): Size {
  const length = random.over(40, 400);
  const breadth = length / random.between(5, 8);
  return { length, breadth, draught: breadth / random.between(2, 4) };
}

/** Draws the particulars of a ship of this size, and the water she lies in. */
export function drawShip(random: Random, { length, breadth, draught }: Size): Lines {
  const depthOver = random.chance(0.03)
    ? random.between(0.7, 1)
    : random.chance(0.03)
      ? 1
      : random.between(1.02, 4);
  const hull = random.chance(0.02) ? random.between(0.5, 1) : random.between(1.1, 2);
  const density = random.of([1025, 1026, 999, random.between(990, 1035)]);
  const displacement = random.chance(0.05)
    ? random.of([2000, 5000, 50_000, 200_000]) * random.of([0.999_99, 1.000_01])
    : (random.between(0.5, 0.9) * length * breadth * draught * density) / 1000;
  return {
    'ship.LOA': length * (random.chance(0.05) ? random.between(0.9, 1.05) : 1.06),
    'ship.LBP': length,
    'ship.L_wL': length * random.between(0.95, 1.05),
    'ship.B': breadth,
    'ship.T': draught,
    'ship.D_m': draught * hull,
    'ship.Δ': displacement,
    // The largest ships there are displace less than a million tonnes.
    'ship.Δ_f': Math.min(
      999_999,
      displacement *
        (random.chance(0.1) ? random.between(0.8, 1) : random.chance(0.5) ? 1 : random.between(1, 2)),
    ),
    'ship.kind': random.of(Object.keys(shipKinds)),
    'ship.GT': random.chance(0.05)
      ? random.of([500, 5000, 50_000, 100_000])
      : Math.round(displacement * random.between(0.3, 1)),
    'ship.C_m': random.chance(0.05) ? 1 : random.between(0.6, 1),
    'ship.areas': random.chance(0.7) ? 'particulars' : 'bare hull',
    'ship.A_Ls': area(random, length * draught * random.between(0.3, 2)),
    'ship.A_Ts': area(random, breadth * draught * random.between(0.5, 3)),
    'ship.d': draught * depthOver,
    'ship.ρ_w': density,
    'ship.ν': random.between(0.9e-6, 1.8e-6),
    'ship.g_n': random.of([9.806_65, 9.81, 9.8]),
  };
}

function area(random: Random, usual: number): Cell {
  if (random.chance(0.015)) return null;
  return random.chance(0.01) ? 0 : usual;
}

/** An angle from the stern: half of them at the quarters and beside the ends. */
function angle(random: Random, offBerth: number): number {
  if (random.chance(0.3)) return random.of([0, 45, 90, 135, 180, 225, 270, 315, 360]);
  return random.chance(offBerth) ? random.between(0, 180) : random.between(180, 360);
}

/** Draws wind and current, with every form of their forces. */
export function drawWeather(random: Random): Lines {
  const seconds = (): number =>
    random.chance(0.3) ? random.of([1, 3, 30, 60, 600, 3600]) : random.over(1, 3600);
  return {
    'wind.V_h': random.chance(0.04) ? 0 : random.between(5, 90),
    'wind.V_m': random.between(20, 70),
    'wind.h_w': random.chance(0.3) ? 10 : random.over(0.5, 60),
    'wind.t_1': seconds(),
    'wind.t_2': seconds(),
    'wind.f_e': random.chance(0.5) ? 1 : random.between(0.8, 1.4),
    'wind.θ_w': angle(random, 0.9),
    'wind.ρ_a': random.between(1.1, 1.32),
    ...(random.chance(0.2) && {
      'wind.ρ_n': random.between(0.95, 1.25),
      'wind.k_CA': random.between(1, 1.5),
    }),
    'wind.method': random.of(['general', 'UFC', 'OCIMF', 'unit weight']),
    'wind.m_w': random.between(-0.08, 0.08),
    'wind.C_wb': random.between(0.6, 1.5),
    'wind.C_bow': random.between(0.3, 1.1),
    'wind.C_st': random.between(0.3, 1.1),
    'wind.n_w': random.chance(0.6) ? random.of([1, 2]) : random.chance(0.1) ? 0 : random.between(0.2, 2),
    'wind.C_3': random.between(0.7, 1.1),
    'wind.h_S': random.over(0.1, 50),
    'wind.h_H': random.over(0.1, 25),
    'wind.A_S': random.chance(0.05) ? 0 : random.over(10, 5000),
    'wind.A_H': random.over(10, 5000),
    'wind.deck': random.of(['single', 'distributed']),
    'wind.θ_x': random.chance(0.3) ? random.of([10, 80, 90, 120, 170]) : random.between(10, 170),
    'wind.C_xB': random.between(0.3, 0.9),
    'wind.C_xS': random.between(0.3, 0.9),
    'wind.state': random.of(['loaded', 'ballast']),
    'wind.form': random.of(['SI', '7600']),
    'wind.C_γ': random.between(0.7, 1.5),
    'wind.γ_a': random.between(0.0108, 0.013),
    'current.V_c': random.chance(0.05)
      ? 0
      : random.chance(0.1)
        ? random.between(3, 6)
        : random.between(0.1, 3),
    'current.V_m': random.chance(0.1) ? 0 : random.chance(0.3) ? 1 : random.between(0, 2.5),
    'current.θ_c': angle(random, 0.85),
    'current.ways': random.of(['one way', 'both ways', 'any way']),
    'current.method': random.of(['general', 'UFC', 'OCIMF']),
    'current.m_c': random.between(-0.08, 0.08),
    'current.C_cb': random.between(0.8, 6),
    'current.C_ch': random.between(0.2, 0.8),
    'current.C_1': random.between(2.5, 4),
    'current.K': random.chance(0.6) ? random.of([2, 3]) : random.between(1, 4),
    'current.ship_kind': random.of(['destroyer', 'cruiser', 'carrier', 'cargo', 'tanker', 'submarine']),
    'current.C_xb': random.between(0.05, 0.2),
    'current.C_pr': random.chance(0.1) ? 0 : random.between(0.2, 1.2),
    'current.p_d': random.chance(0.1) ? random.of([0.1, 3]) : random.between(0.5, 1.5),
  };
}

/** Now and then, other coefficients for tankers: some end before the angle asked for. */
export function drawTankerTables(random: Random): Drawn['tables'] {
  const table = (
    key: string,
    curves: Readonly<Record<string, readonly (readonly [number, number])[]>>,
  ): Drawn['tables'][string] => {
    const angles = [0, 10, 20, 40, 60, 80, 100, 120, 140, 160, 170, 180];
    const kept = random.chance(0.5) ? angles : angles.slice(random.whole(0, 3), random.whole(9, 12));
    const factor = random.between(0.7, 1.3);
    return kept.map((at) => ({
      [key]: at,
      ...Object.fromEntries(
        Object.entries(curves).map(([name, curve]) => [
          name,
          factor * (curve.find(([one]) => one === at)?.[1] ?? 0),
        ]),
      ),
    }));
  };
  return {
    ...(random.chance(0.15) && { 'wind.ocimf': table('a_w', windCurves) }),
    ...(random.chance(0.15) && { 'current.ocimf': table('a_c', currentCurves) }),
  };
}

/** Draws the other directions of wind and current: some, all round, or none. */
export function drawDirections(random: Random, isRound: boolean): Drawn['tables'] {
  const rows = (count: number, angles: (row: number) => number): Drawn['tables'][string] =>
    Array.from({ length: count }, (_, row) => ({
      a: angles(row),
      p: random.chance(0.6) ? 1 : random.chance(0.05) ? 0 : random.between(0.2, 1),
    }));
  const winds = !isRound ? 0 : random.chance(0.2) ? 8 : random.whole(0, 3);
  return {
    'wind.from': rows(winds, (row) => (winds === 8 ? row * 45 : angle(random, 0.9))),
    'current.from': rows(isRound ? random.whole(0, 2) : 0, () =>
      random.chance(0.3) ? random.between(170, 360) : angle(random, 0.9),
    ),
  };
}
