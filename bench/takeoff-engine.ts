import { createEngine, type Engine } from '../src/engine/index.ts';
import { checkFormula, plainType, type Scope, type Type, typeOfUnit } from '../src/language/index.ts';
import { readUnit, standardUnits } from '../src/units/index.ts';
import { numberOf } from './our-sheet.ts';
import { RATE, ROWS, type Takeoff, type Totals } from './takeoff.ts';

const TABLE = 'job.t';
const columns: Readonly<Record<string, string>> = {
  quantity: 'm^3',
  waste: '',
  price: 'USD/m^3',
  net: 'm^3',
  cost: 'USD',
  time: 's',
};
const columnFormulas = { net: 'quantity * (1 + waste)', cost: 'net * price', time: 'net / rate' };
const totalFormulas = { sum_net: 'SUM(t.net)', sum_cost: 'SUM(t.cost)', sum_time: 'SUM(t.time)' };

function typeIn(unitText: string): Type {
  const unit = readUnit(unitText, standardUnits);
  if (!unit.ok) throw new Error(`no unit ${unitText}`);
  return unitText === '' ? plainType : typeOfUnit(unit.value);
}

function scopeOf(table: string | undefined): Scope {
  return {
    units: standardUnits,
    ...(table !== undefined && { table }),
    names: () => [],
    resolve: (name) => {
      if (name === 'rate') return { kind: 'cell', named: { id: 'job.rate', type: typeIn('m^3/s') } };
      const bare = name.replace(/^t\./, '');
      const named = { id: `${TABLE}.${bare}`, type: typeIn(columns[bare] ?? '') };
      return { kind: bare === name ? 'row' : 'column', named, table: TABLE };
    },
  };
}

function setFormulas(
  engine: Engine,
  formulas: Readonly<Record<string, string>>,
  table: string | undefined,
): void {
  const scope = scopeOf(table);
  for (const [name, formula] of Object.entries(formulas)) {
    const { typed, text, problems } = checkFormula(formula, scope);
    if (problems[0]) throw new Error(`${formula}: ${problems[0].message}`);
    engine.setFormula(`${table ?? 'job'}.${name}`, typed, { text, ...(table !== undefined && { table }) });
  }
}

/** The takeoff in a new engine, from typed columns to totals: the formulas are checked, compiled and computed. */
export function loadTakeoff({ quantity, waste, price }: Takeoff): Engine {
  const engine = createEngine({ units: standardUnits, system: 'SI' });
  engine.setTableLength(TABLE, ROWS);
  engine.setInput('job.rate', RATE);
  engine.setColumn(`${TABLE}.quantity`, TABLE, quantity);
  engine.setColumn(`${TABLE}.waste`, TABLE, waste);
  engine.setColumn(`${TABLE}.price`, TABLE, price);
  setFormulas(engine, columnFormulas, TABLE);
  setFormulas(engine, totalFormulas, undefined);
  engine.recalculate();
  return engine;
}

/** Changes the quantity in one row and computes what follows. */
export function editTakeoff(engine: Engine, row: number, quantity: number): void {
  engine.patchColumn(`${TABLE}.quantity`, row, Float64Array.of(quantity));
  engine.recalculate();
}

/** Replaces the column of quantities and computes what follows. */
export function replaceQuantity(engine: Engine, quantity: Float64Array): void {
  engine.setColumn(`${TABLE}.quantity`, TABLE, quantity);
  engine.recalculate();
}

export function totalsOf(engine: Engine): Totals {
  return {
    net: numberOf(engine, 'job.sum_net'),
    cost: numberOf(engine, 'job.sum_cost'),
    time: numberOf(engine, 'job.sum_time'),
  };
}
