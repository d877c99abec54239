import { PLAIN_UNIT, type Unit, writeQuantity } from '../units/index.ts';
import type { Hazard } from './lower/watched.ts';
import type { EngineValue } from './program.ts';

/** A value the two engines do not agree on. A text is shown in the form in which texts are compared. */
export interface RecheckFinding {
  readonly id: string;
  /** The row of a column, from 1. */
  readonly row?: number;
  readonly engine: EngineValue;
  readonly recheck: EngineValue;
  /** One sentence that names both values, in the unit the person reads. */
  readonly message: string;
}

/** A value that no comparison can decide. */
export interface RecheckDoubt {
  readonly id: string;
  /** The row of a column, from 1. */
  readonly row?: number;
  readonly message: string;
}

/** What came of rechecking a book. */
export interface RecheckReport {
  /** How many values agree, entered ones included. */
  readonly agree: number;
  /** How many of those were entered: of them only the reading in a unit is computed a second time. */
  readonly entries: number;
  /** How many values neither engine has. */
  readonly withoutValue: number;
  readonly findings: readonly RecheckFinding[];
  /** Values no comparison can decide: a rounding tie where the last digit settles which way, a far tail. */
  readonly indeterminate: readonly RecheckDoubt[];
  /** Lines and columns that were not computed a second time, and how many values they have. */
  readonly notRechecked: readonly {
    readonly id: string;
    readonly reason: string;
    readonly values: number;
  }[];
  /** The calculated lines and columns that depend on those, in the order of the book. */
  readonly resting: readonly string[];
}

/** What agreement of the two engines does not prove; to be shown with every report. */
export const RECHECK_LIMITS =
  'The recheck computes what it counts as computed twice with another engine, other arithmetic order and unit factors from ' +
  'another source. It shares the reading of formulas and entries, the checking of types and the translation into plain ' +
  'spreadsheet formulas with the first, and takes its inputs as they stand: it does not show that a formula is the ' +
  'right one, that a coefficient or a standard applies, or that an entry is true.';

/** The report as a person reads it, a line each: the count, the findings, what is undecided, what was left out. */
export function reportLines(report: RecheckReport): readonly string[] {
  const { findings, indeterminate, notRechecked } = report;
  const counts = [
    agreeWords(report),
    findings.length > 0 ? counted(findings.length, 'value disagrees', 'values disagree') : '',
    report.withoutValue > 0
      ? counted(
          report.withoutValue,
          'has no value in either computation',
          'have no value in either computation',
        )
      : '',
    indeterminate.length > 0 ? counted(indeterminate.length, 'is not decided', 'are not decided') : '',
    notRecheckedWords(report),
  ];
  return [
    `${counts.filter((part) => part !== '').join('; ')}.`,
    ...findings.map((finding) => finding.message),
    ...indeterminate.map((tie) => tie.message),
    ...notRechecked.map(({ id, reason }) => `${id}: not rechecked: ${reason}`),
    ...restingLines(report),
  ];
}

/** How many values agree, and how many of them no formula gave. */
function agreeWords({ agree, entries }: RecheckReport): string {
  const words = counted(agree, 'value agrees', 'values agree');
  return `${words} (${agree - entries} computed twice, ${counted(entries, 'entry', 'entries')})`;
}

/** How much was not computed a second time; empty where all was. */
export function notRecheckedWords({ notRechecked }: RecheckReport): string {
  const values = notRechecked.reduce((sum, one) => sum + one.values, 0);
  if (notRechecked.length === 0) return '';
  return `${counted(values, 'value', 'values')} of ${counted(notRechecked.length, 'line', 'lines')} not rechecked`;
}

/** The most results named that rest on what was not rechecked. */
const MOST_NAMED = 12;

function restingLines({ resting }: RecheckReport): readonly string[] {
  if (resting.length === 0) return [];
  const more = resting.length - MOST_NAMED;
  const named = resting.slice(0, MOST_NAMED).join(', ');
  return [
    `these rest on what was not rechecked, whose values they take from the first computation: ${named}${more > 0 ? ` and ${more} more` : ''}`,
  ];
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** Where a value stands: for the report, with the row from 1, and in words (`pile.layers.f, row 3`). `row` is from 0. */
export function whereOf(
  id: string,
  row: number | undefined,
): { readonly place: { readonly id: string; readonly row?: number }; readonly words: string } {
  if (row === undefined) return { place: { id }, words: id };
  return { place: { id, row: row + 1 }, words: `${id}, row ${row + 1}` };
}

/** The sentence of a finding. `from`: another finding it follows from. */
export function findingWords(
  where: string,
  engine: EngineValue,
  recheck: EngineValue,
  unit: Unit | undefined,
  from?: string,
): string {
  const words = `${where}: the book has ${valueWords(engine, unit)}, the recheck ${valueWords(recheck, unit)}`;
  return from === undefined ? words : `${words} (it depends on ${from})`;
}

/** The sentence of a value whose formula the second engine cannot read: a fault of the recheck itself. */
export function unreadableWords(where: string, error: string): string {
  return `${where}: the recheck could not read the formula it wrote itself (${error})`;
}

/** The sentence of a value that is not decided. */
export function doubtWords(where: string, hazard: Hazard): string {
  return `${where}: not decided: ${hazardWords[hazard]}`;
}

const hazardWords: Readonly<Record<Hazard, string>> = {
  tie: 'it rounds a quotient whose last digit settles which way',
  tail: 'its chance is so near 0 or 1 that the quantile of the recheck is not exact',
};

/** A value with as many digits as it takes to tell two apart that do not agree. */
function valueWords(value: EngineValue, unit: Unit = PLAIN_UNIT): string {
  if (value === undefined) return 'no value';
  if (typeof value === 'string') return `"${value}"`;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return writeQuantity(value, unit, { digits: 12, grouping: 'none' });
}
