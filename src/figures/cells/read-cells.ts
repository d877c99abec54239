import { fail, nearest, type Outcome, type Problem, problem, succeed } from '../../diagnostics/index.ts';
import type { Figure } from '../../document/index.ts';
import type { Item, Notebook } from '../../notebook/index.ts';
import { readUnit, standardUnits } from '../../units/index.ts';
import type { FigureView } from '../drawing.ts';
import { type Amount, labelUnit } from './amount.ts';
import { readAmounts, readTexts, waitsOn } from './read-column.ts';
import { type Amounts, type CellsOf, quantities, type Role, type Roles, type Texts } from './role.ts';

/** What a sketch is drawn from, and what of it could not be had. */
export interface ReadCells<R extends Roles> {
  readonly cells: CellsOf<R>;
  /** A sentence for each part that is left out. */
  readonly notes: readonly string[];
}

type Held = Amount | Amounts | Texts;
const nowhere = { from: 0, to: 0 };

/**
 * The item a picture of a sheet calls by a name: one of its own sheet, else one with its sheet in front.
 */
function itemNamed(notebook: Notebook, sheet: string, name: string): Outcome<Item> {
  const { items } = notebook.model;
  const item = items.get(`${sheet}.${name}`) ?? items.get(name);
  if (item) return succeed(item);
  const all = [...items.keys()].flatMap((id) =>
    id.startsWith(`${sheet}.`) ? [id.slice(sheet.length + 1), id] : [id],
  );
  return fail(problem('figure-name-unknown', nowhere, { name, near: nearest(name, new Set(all)) }));
}

/**
 * Reads what a sketch is drawn from. Problems where a role that is needed has no cell or its cell no value; a role
 * that is not needed is then left out, with a note.
 */
export function readCells<R extends Roles>(
  notebook: Notebook,
  sheet: string,
  part: Figure,
  roles: R,
  view: FigureView,
): Outcome<ReadCells<R>> {
  const found: Record<string, Held | undefined> = {};
  const problems: Problem[] = [];
  const notes: string[] = [];
  for (const [role, wanted] of Object.entries(roles)) {
    const name = Object.hasOwn(part.cells, role) ? part.cells[role] : undefined;
    if (name === undefined || name.trim() === '') {
      if (wanted.needed) problems.push(problem('figure-cell-needed', nowhere, { role, what: wanted.what }));
      continue;
    }
    const read = readRole(notebook, sheet, name.trim(), wanted, view);
    if (read.ok) found[role] = read.value;
    else if (wanted.needed) problems.push(...read.problems);
    else notes.push(`Left out: ${wanted.what} (${read.problems[0]?.message ?? ''}).`);
  }
  for (const role of Object.keys(part.cells))
    if (!Object.hasOwn(roles, role)) {
      const near = nearest(role, Object.keys(roles), 1)[0];
      notes.push(
        `Not used: this sketch has nothing called “${role}”${near === undefined ? '' : `; did you mean “${near}”?`}`,
      );
    }
  const [first, ...others] = problems;
  if (first) return fail(first, ...others);
  return succeed({ cells: found as CellsOf<R>, notes });
}

function readRole(
  notebook: Notebook,
  sheet: string,
  name: string,
  role: Role,
  view: FigureView,
): Outcome<Held> {
  const named = itemNamed(notebook, sheet, name);
  if (!named.ok) return named;
  const item = named.value;
  const isColumn = item.kind === 'input column' || item.kind === 'formula column';
  const refuse = (wanted: string): Outcome<never> =>
    fail(problem('figure-cell-kind', nowhere, { name, what: role.what, wanted }));
  if (role.holds === 'amount') {
    if (isColumn) return refuse('one value but a column');
    const { called } = quantities[role.of as keyof typeof quantities];
    const read = notebook.result(item.id);
    if (read.status === 'missing') return fail(waitsOn(item.id, 'it is blank'));
    if (!fits(item, role)) return refuse(called);
    if (read.status !== 'ok') return fail(waitsOn(item.id, read.problem.message));
    if (read.value.kind !== 'number') return refuse(called);
    return succeed({
      id: item.id,
      name: item.row.name,
      label: item.row.label ?? '',
      si: read.value.si,
      unit: labelUnit(read.value.unit, view, notebook.model.registry),
    });
  }
  if (!isColumn) return refuse('a column');
  if (role.holds === 'texts') return readTexts(notebook, item);
  if (!fits(item, role))
    return refuse(`a column, each ${quantities[role.of as keyof typeof quantities].called}`);
  return readAmounts(notebook, item, view);
}

/** Whether a line or column is of the kind a role takes; what has no type yet may be. */
function fits(item: Item, role: Role): boolean {
  if (role.of === 'text') return true;
  const unit = readUnit(quantities[role.of].unit, standardUnits);
  if (!unit.ok) throw new Error(`${quantities[role.of].unit} is no unit`);
  const { type } = item;
  if (type.kind === 'unknown') return true;
  if (type.kind === 'point') return role.of === 'level' && type.of.startsWith('elevation:');
  if (type.kind !== 'number') return false;
  return (
    type.zero === true || (type.dimension.key === unit.value.dimension.key && type.angle === unit.value.angle)
  );
}
