import type { Expectation } from '../../document/index.ts';
import { columnNamed, lineNamed, type Notebook, type Value } from '../../notebook/index.ts';
import { fromSI, readUnit, type Unit, writeNumber } from '../../units/index.ts';

/** How a result compares with what a case expects. */
export interface Judgement {
  /** `sheet.name` or `sheet.table.column`; the name as written where there is no such result. */
  readonly id: string;
  readonly agrees: boolean;
  /** Whether it vouches for the result; that a printed value is not met does not. */
  readonly covers: boolean;
  /** What was found and what was expected, in words. */
  readonly words: string;
}

interface Found {
  readonly id: string;
  readonly value?: Value;
  readonly utilisation?: number;
  readonly because?: string;
}

/** Compares one result with its expectation. */
export function judge(notebook: Notebook, expected: Expectation): Judgement {
  const found = find(notebook, expected);
  const covers = expected.reproduces !== false;
  if (found.because !== undefined)
    return { id: found.id, agrees: false, covers: false, words: `${expected.name}: ${found.because}` };
  const parts = [
    verdictPart(found, expected),
    textPart(found, expected),
    numberPart(found, expected, notebook),
  ];
  const said = parts.filter((part) => part !== undefined);
  const agrees = said.length > 0 && said.every((part) => part.agrees);
  const row = expected.row === undefined ? '' : ` row ${expected.row}`;
  return {
    id: found.id,
    agrees,
    covers,
    words: `${expected.name}${row}: ${said.map((part) => part.words).join('; ') || 'nothing is expected of it'}`,
  };
}

function find(notebook: Notebook, { name, row }: Expectation): Found {
  if (row !== undefined) {
    const column = columnNamed(notebook.model, name);
    if (!column.ok) return { id: name, because: column.problems[0]?.message ?? 'not found' };
    const { id } = column.value;
    const whole = notebook.column(id);
    if (whole.status !== 'ok') return { id, because: whole.problem.message };
    if (row > whole.reading.length)
      return { id, because: `there is no row ${row}, only ${whole.reading.length}` };
    const read = whole.reading.at(row - 1);
    if (read.status === 'missing') return { id, because: `row ${row} is blank` };
    if (read.status !== 'ok') return { id, because: read.problem.message };
    const { value } = read;
    if (typeof value === 'string') return { id, value: { kind: 'text', text: value } };
    if (typeof value === 'boolean') return { id, value: { kind: 'truth', truth: value } };
    return { id, value: { kind: 'number', si: value, unit: whole.unit } };
  }
  const line = lineNamed(notebook.model, name);
  if (!line.ok) return { id: name, because: line.problems[0]?.message ?? 'not found' };
  const { id } = line.value;
  const read = notebook.result(id);
  if (read.status === 'missing') return { id, because: 'it is blank' };
  if (read.status !== 'ok') return { id, because: read.problem.message };
  const utilisation = notebook.verdict(id)?.utilisation;
  return { id, value: read.value, ...(utilisation !== undefined && { utilisation }) };
}

type Part = { readonly agrees: boolean; readonly words: string } | undefined;

function verdictPart({ value }: Found, { verdict, truth }: Expectation): Part {
  const wanted = verdict === undefined ? truth : verdict === 'passes';
  if (wanted === undefined) return undefined;
  const is = value?.kind === 'truth' ? value.truth : undefined;
  return { agrees: is === wanted, words: `${is === undefined ? 'no truth value' : is}, expected ${wanted}` };
}

function textPart({ value }: Found, { text }: Expectation): Part {
  if (text === undefined) return undefined;
  const is = value?.kind === 'text' ? value.text : undefined;
  return { agrees: is === text, words: `“${is ?? 'no text'}”, expected “${text}”` };
}

function numberPart(found: Found, expected: Expectation, notebook: Notebook): Part {
  if (expected.value === undefined) return undefined;
  const wanted = expected.value;
  const is = numberIn(found, expected.unit, notebook);
  if (typeof is === 'string') return { agrees: false, words: is };
  const near = Math.abs(is - wanted) <= allowed(expected, wanted);
  const shown = writeNumber(is, { digits: 7 });
  const unit = expected.unit ? ` ${expected.unit}` : '';
  if (expected.reproduces === false)
    return { agrees: !near, words: `${shown}${unit}, which must differ from the printed ${wanted}` };
  const off = wanted === 0 ? '' : ` (${(100 * (is / wanted - 1)).toFixed(3)} %)`;
  return { agrees: near, words: `${shown}${unit}, expected ${wanted}${off}` };
}

/** The result in the unit of the expectation, a check as its utilisation; or why it cannot be. */
function numberIn(found: Found, unit: string | undefined, notebook: Notebook): number | string {
  if (found.value?.kind === 'truth') return found.utilisation ?? 'there is no utilisation to compare';
  if (found.value?.kind !== 'number') return 'there is no number to compare';
  const read: { readonly ok: true; readonly value: Unit } | { readonly ok: false } =
    unit === undefined ? { ok: true, value: found.value.unit } : readUnit(unit, notebook.model.registry);
  if (!read.ok) return `the unit ${unit} cannot be read`;
  if (read.value.dimension.key !== found.value.unit.dimension.key) return `the result is not in ${unit}`;
  return fromSI(found.value.si, read.value);
}

/** A printed value is near within half its last digit, closed at both ends; exact without a tolerance. */
function allowed({ tolerance }: Expectation, wanted: number): number {
  if (!tolerance) return Math.abs(wanted) * 1e-9;
  if ('digits' in tolerance) return tolerance.digits * (1 + 1e-9);
  return Math.abs(wanted) * tolerance.relative;
}
