import { berthingPlan } from './berthing-plan.ts';
import { haulCycle } from './haul-cycle.ts';
import type { FigureKind } from './kind.ts';
import { mooringPlan } from './mooring-plan.ts';
import { pileProfile } from './pile-profile.ts';

/** The kinds of sketch there are, by the name a book gives them. */
export const figureKinds: ReadonlyMap<string, FigureKind> = new Map(
  [pileProfile, berthingPlan, mooringPlan, haulCycle].map((kind) => [kind.name, kind]),
);
