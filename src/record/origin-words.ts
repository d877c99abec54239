import type { Start } from '../document/index.ts';
import type { NamedPart } from '../notebook/index.ts';
import type { OriginDifference, OtherField } from '../review/index.ts';

/** Where a sheet came from: `template bollard-pull, Quaybook 0.1.0` or `“Wharf 3”, revision B`. */
export function startWords({ template, title, version }: Start): string {
  const name =
    template === undefined
      ? title === ''
        ? 'a book without a title'
        : `“${title}”`
      : `template ${template}`;
  if (version === '') return name;
  return `${name}, ${template === undefined ? `revision ${version}` : version}`;
}

/** What became of a line: `deleted`, `added`, `changed to a formula`, `formula, unit changed`. */
export function otherwiseWords({ what, fields }: OriginDifference): string {
  if (what === 'gone') return 'deleted';
  if (what === 'added') return 'added';
  const kind = fields.find(({ field }) => field === KIND);
  if (kind?.is) return `changed to ${kind.is}`;
  const cells = fields.filter(({ field }) => field.startsWith(STATED_CELL));
  const named = cells.length <= CELLS_NAMED ? fields : fields.filter((field) => !cells.includes(field));
  const counted = named === fields ? [] : [`values stated in ${cells.length} rows`];
  return `${[...named.map(({ field }) => field), ...counted].join(', ')} changed`;
}

/** What of a line is told side by side: that an entry is a formula now says its words already. */
export function fieldsTold({ what, fields }: OriginDifference): readonly OtherField[] {
  return fields.filter(({ field }) => field !== KIND || what !== 'changed');
}

const KIND = 'what it is';
const STATED_CELL = 'stated value, row ';

/** So many cells that are stated otherwise are named one by one in a mark. */
const CELLS_NAMED = 3;

/** What a person knows a line, table or column by: its description, else its name. */
export function labelOfPart(part: NamedPart): string {
  if (part.kind === 'row') return part.row.label || part.row.name;
  return part.kind === 'table' ? part.table.title || part.table.name : part.column.label || part.column.name;
}
