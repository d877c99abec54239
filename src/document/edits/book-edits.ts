import type { JsonValue } from '../../diagnostics/index.ts';
import type { About, Settings, Sheet, Title } from '../schema/book.ts';
import type { Edit, Patch } from './patch.ts';

/** Sets one field of the title block. */
export function setTitle(field: keyof Title, value: string): Edit {
  return {
    label: `change the title block’s ${field}`,
    patches: [{ kind: 'set', at: ['title', field], value }],
  };
}

/** Sets one of the settings. */
export function setSettings<Field extends keyof Settings>(
  field: Field,
  value: Required<Settings>[Field],
): Edit {
  return { label: `change the book’s ${field}`, patches: [{ kind: 'set', at: ['settings', field], value }] };
}

/** Sets what the book is about; `undefined` takes it away. */
export function setAbout(about: About | undefined): Edit {
  return { label: 'change what the book is about', patches: [setPatch(['about'], about)] };
}

/** Puts in a sheet in front of position `index`. */
export function insertSheet(index: number, sheet: Sheet): Edit {
  return { label: 'insert a sheet', patches: [{ kind: 'insert', at: ['sheets'], index, value: sheet }] };
}

/** Takes out the sheet with the key. */
export function removeSheet(key: string): Edit {
  return { label: 'remove a sheet', patches: [{ kind: 'remove', at: ['sheets', key] }] };
}

/** Moves the sheet with the key to position `to` among the others. */
export function moveSheet(key: string, to: number): Edit {
  return { label: 'move a sheet', patches: [{ kind: 'move', at: ['sheets', key], to }] };
}

/** Sets a field of a sheet; `undefined` takes an optional one away. Formulas that say a changed key are not touched. */
export function setSheetField<Field extends 'key' | 'title' | 'group'>(
  key: string,
  field: Field,
  value: Sheet[Field] | undefined,
): Edit {
  return { label: `change a sheet’s ${field}`, patches: [setPatch(['sheets', key, field], value)] };
}

/** The patch that sets a field, or takes it away where there is no value. */
export function setPatch(at: readonly (string | number)[], value: JsonValue | undefined): Patch {
  return value === undefined ? { kind: 'set', at } : { kind: 'set', at, value };
}
