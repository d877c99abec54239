import type { JsonValue } from '../../../diagnostics/index.ts';
import type { Edit, Patch, Path } from '../../../document/index.ts';

/** Things of the book that are alike: what they are, how many, and what the only one is called. */
interface Things {
  readonly what: string;
  readonly count: number;
  readonly name: string;
}

/**
 * What an edit took out of the book, in words ("column thick", "3 lines"), from the edit that brings it `back`;
 * undefined for an edit that did anything else.
 */
export function describeDeletion({ patches }: Edit): string | undefined {
  const found = new Map<string, Things>();
  // What its origin says of a sheet comes and goes with it.
  for (const patch of patches.filter(({ at }) => at[0] !== 'origins')) {
    const things = broughtBack(patch);
    if (!things) return undefined;
    const { what, count } = things;
    const before = found.get(what);
    found.set(what, before ? { what, count: before.count + count, name: '' } : things);
  }
  const words = [...found.values()].map(({ what, count, name }) =>
    count === 1 ? `${what} ${name}`.trimEnd() : `${count} ${what}s`,
  );
  return words.length === 0 ? undefined : words.join(' and ');
}

function broughtBack(patch: Patch): Things | undefined {
  if (patch.kind === 'insert') return itemOf(patch.at, patch.value);
  const rows = patch.kind === 'splice' && patch.remove === 0;
  return rows ? { what: 'row', count: patch.insert, name: '' } : undefined;
}

/** What an item of a list of the book is. */
function itemOf(list: Path, item: JsonValue): Things | undefined {
  const one = (what: string, name = ''): Things => ({ what, count: 1, name });
  switch (list.at(-1)) {
    case 'sheets':
      return one('sheet', word(item, 'title') || word(item, 'key'));
    case 'rows':
      return one('line', word(item, 'name'));
    case 'columns':
      return one('column', word(item, 'name'));
    case 'parts':
      switch (word(item, 'kind')) {
        case 'prose':
          return one(word(item, 'role'));
        case 'rows':
          return one('block', word(item, 'title'));
        case 'table':
          return one('table', word(item, 'name'));
        default:
          return one(word(item, 'kind'), word(item, 'title'));
      }
    default:
      return undefined;
  }
}

function word(item: JsonValue, field: string): string {
  if (typeof item !== 'object' || item === null || Array.isArray(item)) return '';
  const value = (item as Readonly<Record<string, JsonValue>>)[field];
  return typeof value === 'string' ? value : '';
}
