import type { Autosave } from '../../src/app/storage/autosave.ts';

/** Stores nothing and calls everything kept: for sessions whose storage is not looked at. */
export const noAutosave: Pick<Autosave, 'state' | 'save' | 'subscribe'> = {
  state: { state: 'kept', at: 0 },
  save: () => undefined,
  subscribe: () => () => undefined,
};
