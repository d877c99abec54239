import type { Book, CalcColumn, Row, SeriesColumn } from '../../document/index.ts';

/** A line or column that a project computes otherwise than the template it was started from. */
export interface ChangedFormula {
  /** `sheet.name` or `sheet.table.column`. */
  readonly id: string;
  readonly what: 'changed' | 'gone' | 'added';
  /** What of it: its formula, a method `for …`, the condition under which it applies, its unit. */
  readonly part: string;
  /** How the template has it, and how the project does; absent where it is not there. */
  readonly was?: string;
  readonly is?: string;
}

/**
 * What a project computes otherwise than a template, by names: formulas, methods, conditions and units; lines of either that the
 * other has not. Entries are the project's own affair, and so are sheets that the template has not.
 */
export function changedFormulas(template: Book, project: Book): readonly ChangedFormula[] {
  const own = new Set(template.sheets.map(({ key }) => key));
  const [before, after] = [computedIn(template), computedIn(project)];
  const ids = new Set([
    ...before.keys(),
    ...[...after.keys()].filter((id) => own.has(id.split('.', 1)[0] ?? '')),
  ]);
  return [...ids].flatMap((id) => {
    const [was, is] = [before.get(id), after.get(id)];
    const what = !was ? 'added' : !is ? 'gone' : 'changed';
    const parts = new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])]);
    return [...parts].flatMap((part): readonly ChangedFormula[] => {
      const [old, now] = [was?.get(part), is?.get(part)];
      if (old === now) return [];
      return [
        { id, what, part, ...(old !== undefined && { was: old }), ...(now !== undefined && { is: now }) },
      ];
    });
  });
}

type Computing = ReadonlyMap<string, string>;

/** How each line and column of a book is computed, part by part. */
function computedIn({ sheets }: Book): ReadonlyMap<string, Computing> {
  const found = new Map<string, Computing>();
  for (const { key, parts } of sheets)
    for (const part of parts) {
      if (part.kind === 'rows')
        for (const row of part.rows) if (isComputed(row)) found.set(`${key}.${row.name}`, computing(row));
      if (part.kind !== 'table') continue;
      for (const column of part.columns)
        if (column.kind !== 'given') found.set(`${key}.${part.name}.${column.name}`, computing(column));
    }
  return found;
}

type ComputedRow = Extract<Row, { readonly kind: 'calc' | 'check' }>;

/** A linked line is an entry that comes from elsewhere. */
function isComputed(row: Row): row is ComputedRow {
  return row.kind === 'check' || (row.kind === 'calc' && row.link === undefined);
}

function computing(line: ComputedRow | CalcColumn | SeriesColumn): Computing {
  const parts = new Map<string, string>();
  if (line.formula !== undefined) parts.set('formula', line.formula.trim());
  if ('by' in line && line.by !== undefined) parts.set('chosen by', line.by);
  for (const { for: texts, formula } of ('methods' in line && line.methods) || [])
    parts.set(`for ${texts?.join(', ') ?? 'all others'}`, formula.trim());
  if ('applies' in line && line.applies !== undefined) parts.set('applies where', line.applies.trim());
  if (line.unit !== undefined && line.unit !== '') parts.set('unit', line.unit);
  return parts;
}
