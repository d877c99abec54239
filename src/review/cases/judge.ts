import type { Expectation } from '../../document/index.ts';
import { columnNamed, lineNamed, methodInForce, type Notebook, type Value } from '../../notebook/index.ts';
import { fromSI, readUnit, type Unit, writeNumber } from '../../units/index.ts';
import { nameOf } from './computations.ts';

/** What a case expects of a check whose condition is not met. */
const IDLE = 'does not apply';
/** What a case expects of a result that the template must refuse to give. */
const REFUSED = 'no value';

/** How near a number must be whose case states no tolerance, relative to itself: it is exact but for rounding. */
export const STATED_EXACTLY = 1e-9;

/** How a result compares with what a case expects. */
export interface Judgement {
  /** `sheet.name` or `sheet.table.column`; the name as written where there is no such result. */
  readonly id: string;
  /** What it vouches for: the result, of one with methods as the method in force computes it. */
  readonly computation: string;
  readonly agrees: boolean;
  /** Whether it vouches for the result; that a printed value is not met does not. */
  readonly covers: boolean;
  /** What was found and what was expected, in words. */
  readonly words: string;
  /** The name as the case writes it, and the row of a column, from 1. */
  readonly name: string;
  readonly row?: number;
  /** How a check stands with the inputs of the case; none for another result, and for a check without a verdict. */
  readonly stands?: 'holds' | 'fails';
  /** Each value that was expected with the one obtained; none where there is no such result. */
  readonly comparisons: readonly Comparison[];
  /** Why a printed value is not met, or why its tolerance is what it is. */
  readonly reason?: string;
}

/** A value expected beside the one obtained. A number is in `unit`; a check compares its utilisation or its verdict. */
export interface Comparison {
  readonly agrees: boolean;
  readonly expected: number | string | boolean;
  /** Undefined where the result has no such value. */
  readonly obtained: number | string | boolean | undefined;
  /** The unit of both; undefined for a text and a verdict, empty for a plain number. */
  readonly unit?: string;
  /** How far apart two numbers may be, in the unit. */
  readonly tolerance?: number;
  /** Whether the source prints what the method does not give: then the two must be further apart. */
  readonly mustDiffer?: boolean;
  readonly words: string;
}

interface Found {
  readonly id: string;
  readonly value?: Value;
  readonly utilisation?: number;
  /** Whether it is a check that does not apply. */
  readonly isIdle?: boolean;
  readonly because?: string;
  /** Whether there is such a result, which has no value. */
  readonly isRefused?: boolean;
}

/** Compares one result with its expectation. */
export function judge(notebook: Notebook, expected: Expectation): Judgement {
  const found = find(notebook, expected);
  const { name, row } = expected;
  const reason = expected.reason ?? reasonOf(expected);
  const isLine = row === undefined && notebook.model.items.has(found.id);
  const verdict = isLine ? notebook.verdict(found.id) : undefined;
  const place = {
    id: found.id,
    ...(verdict && { stands: verdict.holds ? ('holds' as const) : ('fails' as const) }),
    computation: computationOf(notebook, found.id, row),
    name,
    ...(row !== undefined && { row }),
    ...(reason !== undefined && { reason }),
  };
  if (expected.verdict === REFUSED) return { ...place, covers: false, ...compareRefusal(name, found) };
  if (found.because !== undefined)
    return { ...place, agrees: false, covers: false, words: `${name}: ${found.because}`, comparisons: [] };
  const comparisons = [
    compareVerdict(found, expected),
    compareText(found, expected),
    compareNumber(found, expected, notebook),
  ].filter((one) => one !== undefined);
  const said = comparisons.map(({ words }) => words).join('; ') || 'nothing is expected of it';
  return {
    ...place,
    agrees: comparisons.length > 0 && comparisons.every((one) => one.agrees),
    covers: expected.reproduces !== false,
    words: `${name}${row === undefined ? '' : ` row ${row}`}: ${said}`,
    comparisons,
  };
}

function computationOf(notebook: Notebook, id: string, row: number | undefined): string {
  if (!notebook.model.items.has(id)) return id;
  return nameOf(id, methodInForce(notebook, id, row === undefined ? undefined : row - 1)?.method);
}

function reasonOf({ tolerance }: Expectation): string | undefined {
  return tolerance && 'reason' in tolerance ? tolerance.reason : undefined;
}

/** What a case looks at. Where it states a value itself, what the formula comes to: the stated one would agree with itself. */
function find(notebook: Notebook, expected: Expectation): Found {
  const { name, row } = expected;
  if (row !== undefined) {
    const column = columnNamed(notebook.model, name);
    if (!column.ok) return { id: name, because: column.problems[0]?.message ?? 'not found' };
    const { id } = column.value;
    const whole = notebook.column(id);
    if (whole.status !== 'ok') return { id, because: whole.problem.message };
    if (row > whole.reading.length)
      return { id, because: `there is no row ${row}, only ${whole.reading.length}` };
    const isStated = column.value.kind === 'formula column' && column.value.cells?.has(row - 1);
    const formulas = isStated ? notebook.computedColumn(id) : whole;
    if (formulas?.status !== 'ok') return { id, because: formulas?.problem.message ?? 'not found' };
    const read = formulas.reading.at(row - 1);
    if (read.status === 'missing') return { id, because: `row ${row} is blank`, isRefused: true };
    if (read.status !== 'ok') return { id, because: read.problem.message, isRefused: true };
    const { value } = read;
    if (typeof value === 'string') return { id, value: { kind: 'text', text: value } };
    if (typeof value === 'boolean') return { id, value: { kind: 'truth', truth: value } };
    return { id, value: { kind: 'number', si: value, unit: whole.unit } };
  }
  const line = lineNamed(notebook.model, name);
  if (!line.ok) return { id: name, because: line.problems[0]?.message ?? 'not found' };
  const { id } = line.value;
  const read = notebook.computed(id) ?? notebook.result(id);
  if (read.status === 'missing') return { id, because: 'it is blank', isRefused: true };
  if (read.status === 'inapplicable' && expected.verdict !== undefined) return { id, isIdle: true };
  if (read.status !== 'ok')
    return { id, because: read.problem.message, isRefused: read.status !== 'inapplicable' };
  const utilisation = notebook.verdict(id)?.utilisation;
  return { id, value: read.value, ...(utilisation !== undefined && { utilisation }) };
}

function compareRefusal(
  name: string,
  { because, isRefused = false }: Found,
): Pick<Judgement, 'agrees' | 'words' | 'comparisons'> {
  const obtained = isRefused ? REFUSED : undefined;
  const words = `${because ?? 'a value'}, expected ${REFUSED}`;
  const comparison: Comparison = { agrees: isRefused, expected: REFUSED, obtained, words };
  return { agrees: isRefused, words: `${name}: ${words}`, comparisons: [comparison] };
}

function compareVerdict(found: Found, { verdict, truth }: Expectation): Comparison | undefined {
  const { value, isIdle = false } = found;
  if (isIdle || verdict === IDLE) {
    const obtained = isIdle ? IDLE : value?.kind === 'truth' ? (value.truth ? 'passes' : 'fails') : undefined;
    const words = `${obtained ?? 'no verdict'}, expected ${verdict ?? IDLE}`;
    return { agrees: obtained === verdict, expected: verdict ?? IDLE, obtained, words };
  }
  const expected = verdict === undefined ? truth : verdict === 'passes';
  if (expected === undefined) return undefined;
  const obtained = value?.kind === 'truth' ? value.truth : undefined;
  const said = (is: boolean): string => (verdict === undefined ? String(is) : is ? 'holds' : 'fails');
  const words = `${obtained === undefined ? 'no truth value' : said(obtained)}, expected ${said(expected)}`;
  return { agrees: obtained === expected, expected, obtained, words };
}

function compareText({ value }: Found, { text }: Expectation): Comparison | undefined {
  if (text === undefined) return undefined;
  const obtained = value?.kind === 'text' ? value.text : undefined;
  const words = `“${obtained ?? 'no text'}”, expected “${text}”`;
  return { agrees: obtained === text, expected: text, obtained, words };
}

function compareNumber(found: Found, expectation: Expectation, notebook: Notebook): Comparison | undefined {
  const { value: expected, reproduces } = expectation;
  if (expected === undefined) return undefined;
  const tolerance = toleranceOf(expectation, expected);
  const unit = unitOf(found, expectation);
  const stated = { expected, unit, tolerance, ...(reproduces === false && { mustDiffer: true }) };
  const obtained = numberIn(found, expectation.unit, notebook);
  if (typeof obtained === 'string') return { ...stated, agrees: false, obtained: undefined, words: obtained };
  const near = Math.abs(obtained - expected) <= allowed(expectation, expected);
  const shown = `${writeNumber(obtained, { digits: 7 })}${expectation.unit ? ` ${expectation.unit}` : ''}`;
  if (reproduces === false) {
    const words = `${shown}, which must differ from the printed ${expected}`;
    return { ...stated, agrees: !near, obtained, words };
  }
  const off = expected === 0 ? '' : ` (${(100 * (obtained / expected - 1)).toFixed(3)} %)`;
  return { ...stated, agrees: near, obtained, words: `${shown}, expected ${expected}${off}` };
}

/** The unit a number is compared in: that of the expectation, else the result's own. */
function unitOf({ value }: Found, { unit }: Expectation): string {
  return unit ?? (value?.kind === 'number' ? value.unit.text : '');
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

/** How far from the value a result may be: half its last printed digit, a part of it, or next to nothing. */
function toleranceOf({ tolerance }: Expectation, wanted: number): number {
  if (!tolerance) return Math.abs(wanted) * STATED_EXACTLY;
  return 'digits' in tolerance ? tolerance.digits : Math.abs(wanted) * tolerance.relative;
}

/** The same with half a printed digit closed at both ends, where the rounding of the machine falls on either side. */
function allowed(expectation: Expectation, wanted: number): number {
  const { tolerance } = expectation;
  const margin = tolerance && 'digits' in tolerance ? 1 + 1e-9 : 1;
  return toleranceOf(expectation, wanted) * margin;
}
