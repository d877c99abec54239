import type { Sketch } from '../svg/page.ts';
import type { ChartData } from './chart-data.ts';

/** A form of chart: what it is called in a sentence, and how it draws its data. */
export interface ChartForm {
  readonly called: string;
  readonly draw: (data: ChartData) => Sketch;
}
