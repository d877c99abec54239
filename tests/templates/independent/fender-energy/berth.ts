import type { Absorber } from './absorber.ts';
import type { Energy } from './energy.ts';
import type { Fender } from './fender.ts';
import type { Panel } from './panel.ts';
import type { Ship } from './ship.ts';

/** What was worked out of a berth before its wharf. */
export interface Berth {
  readonly ship: Ship;
  readonly energy: Energy;
  readonly fender: Fender;
  readonly panel: Panel;
  readonly absorber: Absorber;
}
