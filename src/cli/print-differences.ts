import type { Result, Value, Verdict } from '../notebook/index.ts';
import type {
  BookComparison,
  Causes,
  CheckStanding,
  Difference,
  Place,
  RowValues,
  Size,
  Subject,
} from '../review/index.ts';
import { writeQuantity } from '../units/index.ts';
import { numberIn } from './number-in.ts';

/** The differences of two books as `--json` lists them: values in their own units, each with its unit and its words. */
export function printDifferences({ differences, tables }: BookComparison): object {
  return {
    differences: differences.map(printDifference),
    tables: tables.map((one) => ({ ...one, table: printSubject(one.table) })),
  };
}

function printDifference(one: Difference): object {
  switch (one.kind) {
    case 'book':
      return one;
    case 'added':
    case 'removed':
    case 'moved':
      return { ...one, subject: printSubject(one.subject) };
    case 'field':
    case 'cell':
      return { ...one, subject: printSubject(one.subject), ...printSize(one.size) };
    case 'method':
      return { ...one, subject: printSubject(one.subject), causes: printCauses(one.causes) };
    case 'result':
    case 'total': {
      const { kind, subject, from, to, size, causes } = one;
      return {
        kind,
        subject: printSubject(subject),
        from: printStanding(from),
        to: printStanding(to),
        ...printSize(size),
        causes: printCauses(causes),
      };
    }
    case 'check': {
      const { kind, subject, from, to, causes } = one;
      const turned = from.word !== to.word;
      return {
        kind,
        subject: printSubject(subject),
        turned,
        from: printCheck(from),
        to: printCheck(to),
        causes: printCauses(causes),
      };
    }
    case 'values': {
      const { kind, subject, lengths, rows, largest, causes } = one;
      return {
        kind,
        subject: printSubject(subject),
        ...(lengths && { lengths }),
        rows: rows.map(printRow),
        ...(largest && { largest: { ...printRow(largest), ...printSize(largest.size) } }),
        causes: printCauses(causes),
      };
    }
  }
}

/** Where something stands, rows and positions counted from 1. */
function printSubject({ kind, before, after }: Subject): object {
  const printed = (place: Place): object => {
    const { index, rowName, ...rest } = place;
    const isInRow = kind === 'row' || kind === 'cell';
    return {
      ...rest,
      ...(isInRow ? { row: index + 1 } : { position: index + 1 }),
      ...(rowName !== undefined && { row_name: rowName }),
    };
  };
  return { kind, ...(before && { before: printed(before) }), ...(after && { after: printed(after) }) };
}

function printCauses({ list, more }: Causes): object {
  const causes = list.map(({ subject, by, cells, rowName }) => ({
    ...(subject && { subject: printSubject(subject) }),
    by,
    ...(cells !== undefined && { cells }),
    ...(rowName !== undefined && { row_name: rowName }),
  }));
  return { list: causes, ...(more && { more }) };
}

function printSize(size: Size | undefined): object {
  if (!size) return {};
  const { absolute, relative } = size;
  const { si, unit } = absolute;
  return {
    size: { absolute: numberIn(si, unit), unit: unit.text, ...(relative !== undefined && { relative }) },
  };
}

function printValue(value: Value | undefined): object | null {
  if (!value) return null;
  if (value.kind === 'text') return { value: value.text };
  if (value.kind === 'truth') return { value: value.truth };
  const { si, unit } = value;
  return { value: numberIn(si, unit), unit: unit.text, text: writeQuantity(si, unit) };
}

function printStanding(result: Result): object {
  if (result.status === 'ok') return { status: 'ok', ...printValue(result.value) };
  const { status } = result;
  return status === 'missing' ? { status } : { status, because: result.problem.message };
}

function printCheck({ word, verdict, because }: CheckStanding): object {
  return { stands: word, ...(verdict && printSides(verdict)), ...(because !== undefined && { because }) };
}

function printSides({ utilisation, demand, capacity }: Verdict): object {
  return {
    ...(utilisation !== undefined && { utilisation }),
    ...(demand && { demand: printValue(demand) }),
    ...(capacity && { capacity: printValue(capacity) }),
  };
}

function printRow({ before, after, rowName, from, to }: RowValues): object {
  const rows = { before: before + 1, after: after + 1 };
  return {
    ...rows,
    ...(rowName !== undefined && { row_name: rowName }),
    from: printValue(from),
    to: printValue(to),
  };
}
