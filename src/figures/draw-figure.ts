import { fail, nearest, type Outcome, problem } from '../diagnostics/index.ts';
import type { Figure } from '../document/index.ts';
import type { Notebook } from '../notebook/index.ts';
import type { Drawing, FigureView } from './drawing.ts';
import { figureKinds } from './kinds/registry.ts';

/**
 * Draws a sketch of a sheet from the values of the book as they stand. Problems if its kind is unknown or a value it
 * needs is not there or cannot be drawn; never throws.
 */
export function drawFigure(
  notebook: Notebook,
  sheetKey: string,
  part: Figure,
  view: FigureView = 'written',
): Outcome<Drawing> {
  const kind = figureKinds.get(part.figure);
  if (!kind) {
    const near = nearest(part.figure, new Set(figureKinds.keys()));
    return fail(problem('figure-unknown', { from: 0, to: 0 }, { figure: part.figure, near }));
  }
  return kind.drawPart(notebook, sheetKey, part, view);
}
