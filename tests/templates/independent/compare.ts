import { columnNamed, lineNamed, type Notebook } from '../../../src/notebook/index.ts';
import { readUnit, toSI, type Unit } from '../../../src/units/index.ts';
import type { Cell, IndependentProgram, Verdict, Worked } from './program.ts';

/** One result of the template beside that of the program. */
export interface Compared {
  /** `sheet.name`, or `sheet.table.column` of all rows. */
  readonly name: string;
  /** How the two differ, in words; undefined where they agree. */
  readonly difference?: string;
  /** The largest difference of two numbers, relative to the larger. */
  readonly off: number;
  /** Whether both have a value. */
  readonly valued: boolean;
  /** How a check stands in the template and in the program. */
  readonly stands?: readonly [Verdict['verdict'], Verdict['verdict']];
}

/** Two numbers that rest on the same formulas agree to this part of the larger, whatever the order of operations. */
const relative = 1e-6;
/** Below this, in its unit, a number is zero but for rounding. */
const zero = 1e-7;

/** Compares all that a program worked out with a notebook in which the same inputs were entered. */
export function compareAll(
  notebook: Notebook,
  program: IndependentProgram,
  worked: Worked,
): readonly Compared[] {
  return Object.entries(worked).map(([name, own]) => {
    if (Array.isArray(own)) return compareColumn(notebook, program, name, own as readonly Cell[]);
    if (own !== null && typeof own === 'object') return compareCheck(notebook, program, name, own as Verdict);
    return {
      name,
      ...compareCell(
        lineValue(notebook, name),
        own,
        unitOf(notebook, program, name),
        program.loose?.[name]?.relative,
      ),
    };
  });
}

function unitOf(notebook: Notebook, { units }: IndependentProgram, name: string): Unit | undefined {
  const text = Object.hasOwn(units, name) ? units[name] : undefined;
  if (text === undefined) return undefined;
  const unit = readUnit(text, notebook.model.registry);
  if (!unit.ok) throw new Error(`${name}: there is no unit ${text}`);
  return unit.value;
}

/** A value in SI, a text, or why there is none. */
type Obtained = { readonly value: Cell | boolean } | { readonly because: string };

function lineValue(notebook: Notebook, name: string): Obtained {
  const line = lineNamed(notebook.model, name);
  if (!line.ok) throw new Error(`${name}: ${line.problems[0]?.message}`);
  const read = notebook.result(line.value.id);
  if (read.status === 'missing') return { because: 'it is blank' };
  if (read.status !== 'ok') return { because: read.problem.message };
  const { value } = read;
  return { value: value.kind === 'number' ? value.si : value.kind === 'text' ? value.text : value.truth };
}

function compareCell(
  obtained: Obtained,
  own: Cell,
  unit: Unit | undefined,
  allowed = relative,
): Omit<Compared, 'name'> {
  if ('because' in obtained) {
    if (own === null) return { off: 0, valued: false };
    return { off: 0, valued: false, difference: `no value (${obtained.because}), program ${own}` };
  }
  const { value } = obtained;
  if (own === null) return { off: 0, valued: false, difference: `${value} in SI, program no value` };
  if (typeof own === 'string' || typeof value !== 'number') {
    return value === own
      ? { off: 0, valued: true }
      : { off: 0, valued: true, difference: `${value}, program ${own}` };
  }
  const [mine, least] = unit ? [toSI(own, unit), Math.abs(toSI(zero, unit) - toSI(0, unit))] : [own, zero];
  const apart = Math.abs(value - mine);
  const off = apart <= least ? 0 : apart / Math.max(Math.abs(value), Math.abs(mine));
  return off <= allowed
    ? { off, valued: true }
    : {
        off,
        valued: true,
        difference: `${value} in SI, program ${mine}, ${(off * 100).toPrecision(3)} % apart`,
      };
}

function compareColumn(
  notebook: Notebook,
  program: IndependentProgram,
  name: string,
  own: readonly Cell[],
): Compared {
  const column = columnNamed(notebook.model, name);
  if (!column.ok) throw new Error(`${name}: ${column.problems[0]?.message}`);
  const whole = notebook.column(column.value.id);
  if (whole.status !== 'ok') {
    const valued = own.some((cell) => cell !== null);
    const difference = `the column has no rows (${whole.problem.message}), program ${own.length}`;
    return { name, off: 0, valued: false, ...(valued && { difference }) };
  }
  const { reading } = whole;
  if (reading.length !== own.length) {
    const difference = `${reading.length} rows, program ${own.length}`;
    return { name, off: 0, valued: true, difference };
  }
  const unit = unitOf(notebook, program, name);
  const cells = own.map((cell, row) => {
    const read = reading.at(row);
    const obtained: Obtained =
      read.status === 'ok'
        ? { value: read.value }
        : { because: read.status === 'missing' ? 'it is blank' : read.problem.message };
    return compareCell(obtained, cell, unit, program.loose?.[name]?.relative);
  });
  const at = cells.findIndex(({ difference }) => difference !== undefined);
  return {
    name,
    off: Math.max(0, ...cells.map(({ off }) => off)),
    valued: cells.some(({ valued }) => valued),
    ...(at >= 0 && { difference: `row ${at + 1}: ${cells[at]?.difference}` }),
  };
}

function compareCheck(notebook: Notebook, program: IndependentProgram, name: string, own: Verdict): Compared {
  const line = lineNamed(notebook.model, name);
  if (!line.ok) throw new Error(`${name}: ${line.problems[0]?.message}`);
  const { id } = line.value;
  const read = notebook.result(id);
  const verdict = notebook.verdict(id);
  const obtained =
    read.status === 'inapplicable'
      ? 'does not apply'
      : read.status === 'ok' && verdict
        ? verdict.holds
          ? 'holds'
          : 'fails'
        : 'refused';
  const stands = [obtained, own.verdict] as const;
  const allowed = program.loose?.[name]?.relative ?? relative;
  const [theirs, mine] = [verdict?.utilisation, own.utilisation];
  const off =
    theirs === undefined || mine === undefined || Math.abs(theirs - mine) <= zero
      ? 0
      : Math.abs(theirs - mine) / Math.max(Math.abs(theirs), Math.abs(mine));
  const valued = obtained !== 'refused' && own.verdict !== 'refused';
  const isEven = [theirs, mine].some((one) => one !== undefined && Math.abs(one - 1) <= allowed);
  const why = 'problem' in read ? ` (${read.problem.message})` : '';
  const difference =
    obtained !== own.verdict && !isEven
      ? `${obtained}${why}, program ${own.verdict}; utilisation ${theirs}, program ${mine}`
      : off > allowed
        ? `utilisation ${theirs}, program ${mine}`
        : undefined;
  return { name, off, valued, stands, ...(difference !== undefined && { difference }) };
}
