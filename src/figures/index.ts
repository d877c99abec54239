export { drawChart } from './draw-chart.ts';
export { drawFigure } from './draw-figure.ts';
export { type CheckOrder, drawUtilisations } from './draw-utilisations.ts';
export type { Drawing, DrawingTable, FigureView } from './drawing.ts';
export { figureCss } from './figure-css.ts';
export { figureKinds } from './kinds/registry.ts';
export { plainWidth } from './svg/words.ts';
