import { type Outcome, succeed } from '../../diagnostics/index.ts';
import type { Figure } from '../../document/index.ts';
import type { Notebook } from '../../notebook/index.ts';
import { readCells } from '../cells/read-cells.ts';
import type { CellsOf, Roles } from '../cells/role.ts';
import type { Drawing, DrawingTable, FigureView } from '../drawing.ts';
import { frameSketch, type Sketch } from '../svg/page.ts';

/** What a kind draws: a sketch, what it shows in words, and as a table. */
interface Picture extends Sketch {
  readonly description: string;
  readonly table?: DrawingTable;
}

/** A kind of sketch as it is declared: its name in the book, what it is drawn from, and how. */
interface Definition<R extends Roles> {
  readonly name: string;
  /** The title of a sketch that has none of its own. */
  readonly title: string;
  readonly roles: R;
  /** Draws; ids in the markup begin with `id`. A value that cannot be drawn is a problem. */
  readonly draw: (cells: CellsOf<R>, id: string) => Outcome<Picture>;
}

/** A kind of sketch, ready to draw a part of a book. */
export interface FigureKind {
  readonly name: string;
  readonly title: string;
  readonly roles: Roles;
  readonly drawPart: (notebook: Notebook, sheet: string, part: Figure, view: FigureView) => Outcome<Drawing>;
}

/** Declares a kind of sketch. */
export function figureKind<const R extends Roles>(definition: Definition<R>): FigureKind {
  const { name, roles } = definition;
  return {
    name,
    title: definition.title,
    roles,
    drawPart: (notebook, sheet, part, view) => {
      const read = readCells(notebook, sheet, part, roles, view);
      if (!read.ok) return read;
      const drawn = definition.draw(read.value.cells, part.id);
      if (!drawn.ok) return drawn;
      const picture = drawn.value;
      const notes = [...(picture.notes ?? []), ...read.value.notes];
      const title = part.title === undefined || part.title === '' ? definition.title : part.title;
      return succeed({
        svg: frameSketch(part.id, title, picture.description, { ...picture, notes }),
        title,
        description: [picture.description, ...notes].join(' '),
        ...(picture.table && { table: picture.table }),
      });
    },
  };
}
