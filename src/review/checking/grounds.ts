import type { Subject } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { keyOfStep, nextOf, type Step } from './steps.ts';
import { findSubject, identityOfRow, idInBook } from './subjects.ts';

/** What a value rests on: a line; the whole of a column or the rows of a table; or one cell, by the identity of its row. */
export interface Ground {
  /** The id of the line, column or table. */
  readonly item: string;
  readonly rows: 'none' | 'all' | number;
}

/**
 * All that a line or cell rests on, itself first and then the nearest: of methods the one in force, of a stated value nothing
 * but itself, of a cell the cells of its row where a formula reads these.
 */
export function groundsOf(notebook: Notebook, subject: Subject): readonly Ground[] {
  const { model } = notebook;
  const start = findSubject(model, subject);
  if (!start) return [];
  const reached = new Map<string, Step>();
  const grounds: Ground[] = [];
  const reach = (step: Step): void => {
    const key = keyOfStep(step);
    if (!reached.has(key)) reached.set(key, step);
  };
  reach(start);
  for (const step of reached.values()) {
    grounds.push(groundOf(notebook, step));
    if ('table' in step.item && step.row === undefined) {
      const part = model.tables.get(step.item.table)?.part;
      if (part?.length !== undefined) grounds.push({ item: part.id, rows: 'none' });
      for (const maker of part?.columns ?? []) {
        const made = maker.kind === 'series' && model.items.get(`${step.item.table}.${maker.name}`);
        if (made) reach({ item: made });
      }
    }
    const { steps, rows } = nextOf(notebook, step);
    if (rows !== undefined) grounds.push({ item: rows, rows: 'none' });
    for (const next of steps) reach(next);
  }
  return grounds;
}

function groundOf({ model }: Notebook, { item, row }: Step): Ground {
  const id = idInBook(item);
  if (!('table' in item)) return { item: id, rows: 'none' };
  return { item: id, rows: row === undefined ? 'all' : identityOfRow(model, item, row) };
}
