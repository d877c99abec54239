/** The version of this program, as its package states it. */
export const PROGRAM_VERSION = '0.1.0';
