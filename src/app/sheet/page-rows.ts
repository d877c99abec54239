import type { Sheet, Table } from '../../document/index.ts';
import type { Session } from '../session/session.ts';
import { type GridMap, gridMap, hasTitle } from './place/grid-map.ts';

/** The rows of a page as it was drawn last. */
export class PageRows {
  map: GridMap = { sheet: '', count: 0, rowAt: () => undefined, indexOf: () => -1 };
  /** The number of rows of each table. */
  #lengths: ReadonlyMap<string, number> = new Map();
  /** Blocks that had a title since the sheet was turned to, whose row stays when it is cut, and those whose title is in hand. */
  #titled: ReadonlySet<string> = new Set();

  /** Takes stock of a sheet that is about to be drawn. */
  take(session: Session, sheet: Sheet): void {
    const known = this.map.sheet === sheet.key ? this.#titled : new Set<string>();
    const inHand = titlesInHand(session, sheet);
    this.#titled = new Set(
      sheet.parts.flatMap((part) =>
        part.kind === 'rows' && (hasTitle(part.title) || known.has(part.id) || inHand.has(part.id))
          ? [part.id]
          : [],
      ),
    );
    this.map = gridMap(sheet, (table) => session.notebook.rowsOf(table), this.#titled);
    this.#lengths = new Map(
      sheet.parts.flatMap((part) =>
        part.kind === 'table' ? [[part.id, lengthOf(session, sheet, part)]] : [],
      ),
    );
  }

  /** Whether a sheet has other rows by now. */
  isOutdated(session: Session, sheet: Sheet): boolean {
    const inHand = titlesInHand(session, sheet);
    return sheet.parts.some((part) => {
      if (part.kind === 'table') return this.#lengths.get(part.id) !== lengthOf(session, sheet, part);
      const titled = this.map.indexOf({ part: part.id, item: '' }) >= 0;
      return (
        part.kind === 'rows' &&
        titled !==
          (hasTitle(part.title) || this.#titled.has(part.id) || inHand.has(part.id) || part.rows.length === 0)
      );
    });
  }
}

/** The parts whose title is being typed, or stands chosen: blank though it is in the book, it is seen. */
function titlesInHand({ hand, place }: Session, { key }: Sheet): ReadonlySet<string> {
  return new Set(
    [hand?.place, place].flatMap((at) => (at?.sheet === key && at.item === '' ? [at.part] : [])),
  );
}

function lengthOf(session: Session, sheet: Sheet, { name }: Table): number {
  return session.notebook.rowsOf(`${sheet.key}.${name}`) ?? 0;
}
