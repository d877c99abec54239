import { bollardPull } from './bollard-pull.ts';
import { debrisHaul } from './debris-haul.ts';
import { fenderEnergy } from './fender-energy.ts';
import { pileBearing } from './pile-bearing.ts';
import type { IndependentProgram } from './program.ts';

/** The independent programs, one for a template. */
export const programs: readonly IndependentProgram[] = [bollardPull, debrisHaul, fenderEnergy, pileBearing];
