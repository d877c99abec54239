import type { BookComparison, Cause, Difference, Subject } from '../../../src/review/index.ts';

/**
 * What a comparison says, as texts in no order, with old and new exchanged or not: sizes and the names of rows, which are
 * told of the new book, apart.
 */
export function saidBy({ differences }: BookComparison, exchanged: boolean): readonly string[] {
  return differences.map((one) => JSON.stringify(told(one, exchanged))).sort();
}

function told(one: Difference, exchanged: boolean): object {
  const kind = kindOf(one.kind, exchanged);
  const [from, to] = [
    'from' in one && one.from !== undefined ? withoutMessages(one.from) : undefined,
    'to' in one && one.to !== undefined ? withoutMessages(one.to) : undefined,
  ];
  return {
    kind,
    ...('subject' in one && { subject: subject(one.subject, exchanged) }),
    ...('field' in one && { field: one.field }),
    ...('method' in one && { method: one.method }),
    ...('within' in one && { within: one.within }),
    ...('only' in one && { only: one.only }),
    ...('says' in one && { says: one.says }),
    ...('cells' in one && { cells: one.cells }),
    from: exchanged ? to : from,
    to: exchanged ? from : to,
    ...(one.kind === 'values' && { rows: rowsOf(one, exchanged) }),
    ...('causes' in one &&
      !one.causes.more && { causes: one.causes.list.map((cause) => causeOf(cause, exchanged)).sort() }),
  };
}

const OTHER: Readonly<Record<string, string>> = { added: 'removed', removed: 'added' };

function kindOf(kind: string, exchanged: boolean): string {
  return exchanged ? (OTHER[kind] ?? kind) : kind;
}

function subject({ kind, before, after }: Subject, exchanged: boolean): object {
  return exchanged ? { kind, before: after, after: before } : { kind, before, after };
}

function rowsOf({ rows }: Extract<Difference, { kind: 'values' }>, exchanged: boolean): readonly string[] {
  return rows
    .map(({ before, after, from, to }) =>
      JSON.stringify(
        exchanged ? [after, before, to ?? null, from ?? null] : [before, after, from ?? null, to ?? null],
      ),
    )
    .sort();
}

function causeOf(cause: Cause, exchanged: boolean): string {
  const by = cause.by.map((field) => kindOf(field, exchanged)).sort();
  return JSON.stringify({
    by,
    cells: cause.cells,
    ...(cause.subject && { subject: subject(cause.subject, exchanged) }),
  });
}

/** The sentence of a missing value tells of one book alone. */
function withoutMessages(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('status' in value)) return value;
  return 'problem' in value ? value.status : value;
}
