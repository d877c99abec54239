import { workAbsorber } from './fender-energy/absorber.ts';
import { workBands } from './fender-energy/bands.ts';
import { workCodes } from './fender-energy/codes.ts';
import { draw } from './fender-energy/draw.ts';
import { siteColumn, workEnergy } from './fender-energy/energy.ts';
import { workFender } from './fender-energy/fender.ts';
import { workPanel } from './fender-energy/panel.ts';
import { workShip } from './fender-energy/ship.ts';
import { belted, shippedTables, typeOfHull } from './fender-energy/tables.ts';
import { workTablesInOrder } from './fender-energy/tables-in-order.ts';
import { units } from './fender-energy/units.ts';
import { asCell, type Inputs, readInputs } from './fender-energy/values.ts';
import { workWharf } from './fender-energy/wharf.ts';
import type { Cell, IndependentProgram, Worked } from './program.ts';
import { withoutNegatives } from './signs.ts';

/** Levels, positions along the berth, and speeds of which one may be away from the other. */
const signed: ReadonlySet<string> = new Set([
  'ship.z_w',
  'ship.z_b',
  'panel.z_LW',
  'panel.z_t',
  'wharf.x_R',
  'wharf.bents.s',
  'absorber.u_1',
  'absorber.u_2',
]);

/** Berthing energy and fenders, by the works cited in the files beside this one. */
export const fenderEnergy: IndependentProgram = {
  template: 'fender-energy',
  units,
  draw,
  work: (drawn) => {
    const inputs = readInputs(withoutNegatives(drawn, signed), shippedTables);
    const ship = workShip(inputs);
    const energy = workEnergy(inputs, ship);
    const fender = workFender(inputs, ship, energy);
    const panel = workPanel(inputs, ship, fender);
    const absorber = workAbsorber(inputs, { ship, energy, panel });
    const wharf = workWharf(inputs, { ship, energy, fender, panel, absorber });
    const bands = workBands(inputs, { ship, energy, fender, panel });
    const codes = workCodes(inputs);
    const order = workTablesInOrder(inputs);
    return {
      ...named('ship', { ...ship.numbers, ...ship.checks }),
      ...named('energy', { ...energy.numbers, ...energy.texts, ...energy.checks }),
      ...named('fender', { ...fender.numbers, ...fender.texts, ...fender.checks }),
      ...named('panel', { ...panel.numbers, ...panel.texts, ...panel.checks }),
      ...named('wharf', { ...wharf.numbers, ...wharf.checks }),
      ...named('wharf', { ...wharf.flat.numbers, ...wharf.flat.checks }),
      ...named('absorber', { ...absorber.numbers, ...absorber.checks }),
      ...named('panel.way', columnsAsCells(panel.way)),
      ...columnsOf(inputs, fender, wharf),
      ...named('data.codes', columnsAsCells(codes.columns)),
      'data.codes.code': codes.names,
      'data.bands.on': bands.used,
      'data.bands.x': bands.values.map(asCell),
      'data.bands.within': bands.within,
      'data.N_o': asCell(bands.beyond),
      'data.first': bands.first,
      'data.c_b': bands.check,
      'data.N_1': bands.values.length,
      'data.c_all': { verdict: 'holds' },
      'data.angles.dAF': order.falls.map(asCell),
      'data.pressure.p_x': order.permitted.map(asCell),
      ...named('data', order.checks),
    };
  },
};

/** Results by their full names; those that the sources do not decide here are left out. */
function named(sheet: string, results: Readonly<Record<string, Worked[string] | undefined>>): Worked {
  return Object.fromEntries(
    Object.entries(results).flatMap(([name, result]) =>
      result === undefined
        ? []
        : [[`${sheet}.${name}`, typeof result === 'number' ? asCell(result) : result]],
    ),
  );
}

function columnsAsCells(
  columns: Readonly<Record<string, readonly number[]>>,
): Readonly<Record<string, readonly Cell[]>> {
  return Object.fromEntries(Object.entries(columns).map(([name, cells]) => [name, cells.map(asCell)]));
}

function columnsOf(
  { rows, text }: Inputs,
  { curve, offers, bySpeed }: ReturnType<typeof workFender>,
  { columns }: ReturnType<typeof workWharf>,
): Worked {
  const cells = (numbers: readonly number[]): readonly Cell[] => numbers.map(asCell);
  const speeds = rows('data.brolsma');
  return {
    'fender.fenders.E_unit': cells(offers.map(({ energy }) => energy)),
    'fender.fenders.R_unit': cells(offers.map(({ reaction }) => reaction)),
    'fender.fenders.use': offers.map((offer) => offer.use),
    ...(curve.whole && {
      'fender.performance.r_m': cells(curve.peaks),
      'fender.performance.dA': cells(curve.strips),
      'fender.performance.A': cells(curve.areas),
      'fender.performance.e': cells(curve.areas.map((area) => area / curve.area)),
    }),
    ...(bySpeed && {
      'fender.speeds.v_t': cells(bySpeed.map(({ speed }) => speed)),
      'fender.speeds.E_t': cells(bySpeed.map(({ energy }) => energy)),
      'fender.speeds.u_t': cells(bySpeed.map(({ share }) => share)),
    }),
    'wharf.bents.r': cells(columns.r),
    'wharf.bents.n_s': cells(columns.n_s),
    'wharf.bents.H': cells(columns.H),
    'wharf.bents.H_p': cells(columns.H_p),
    'wharf.bents.H_f': cells(columns.H_f),
    'data.ships.C_B_t': cells(
      rows('data.ships').map(
        (row) => row.number('M_t') / (1.025 * row.number('L_BP_t') * row.number('B_t') * row.number('D_t')),
      ),
    ),
    'data.is_speeds.v_i': cells(
      rows('data.is_speeds').map((row) => row.number(siteColumn(text('energy.v_site')))),
    ),
    'data.brolsma.ln_M': cells(speeds.map((row) => Math.log(row.number('M50')))),
    'data.brolsma.ln_a': cells(speeds.map((row) => Math.log(row.number('a')))),
    'data.pressure.type': rows('data.pressure').map((row) => typeOfHull(row.text('ship_kind'))),
    'data.pressure.belt': cells(
      rows('data.pressure').map((row) => Number(belted.includes(row.text('ship_kind')))),
    ),
    'data.brolsma.ln_v': cells(speeds.map((row) => Math.log(row.number(text('energy.v_curve'))))),
  };
}
