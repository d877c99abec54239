import type { IndependentProgram } from './program.ts';

/** The independent programs, one for a template. */
export const programs: readonly IndependentProgram[] = [];
