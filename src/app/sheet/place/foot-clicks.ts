import { findPlace } from '../../editing/find-place.ts';
import type { CellPlace } from '../../view-model/place.ts';
import type { MenuAction } from '../menu/quay-sheet-menu.ts';
import { type CommandHost, dispatchCommand } from './commands.ts';
import { placeAt } from './grid-map.ts';

type Host = Omit<CommandHost, 'openMenu'> & { readonly openMenu: (below?: HTMLElement) => void };

/** Does what a button at the foot of a block or table asks for; false for anything else that was clicked. */
export function clickFoot(host: Host, target: Element | undefined): boolean {
  const button = target?.closest<HTMLElement>('[data-adds]');
  if (!button) return false;
  const { adds, belowPart = '', belowItem = '' } = button.dataset;
  const at = placeBelow(host, belowPart, belowItem, adds === 'column');
  if (!at) return true;
  host.goTo(at);
  if (adds === 'anything') host.openMenu(button);
  else dispatchCommand(host, { kind: 'menu action', action: actionFor(host, at, adds) });
  return true;
}

function actionFor(host: Host, at: CellPlace, adds: string | undefined): MenuAction {
  if (adds === 'row') return 'insert row';
  const found = findPlace(host.session.notebook.book, at);
  // Nothing can be entered in rows that a series makes.
  if (adds === 'column')
    return found?.part.kind === 'table' && found.part.length === undefined
      ? 'insert calc column'
      : 'insert given column';
  return found?.kind === 'row' && found.row.kind === 'calc' ? 'insert calc' : 'insert given';
}

/** The place that something is put below or, of a column, beside: its last one. */
function placeBelow({ map }: Host, part: string, item: string, last: boolean): CellPlace | undefined {
  const index = map.indexOf({ part, item });
  const field = last ? map.rowAt(index)?.fields.at(-1) : map.rowAt(index)?.fields[0];
  return field === undefined ? undefined : placeAt(map, index, field);
}
