import { BLOCK } from './stream.ts';

/** Scratch arrays of one block by depth, made when first asked for and used by every program in turn. */
export function registerFile(): (depth: number) => Float64Array {
  const registers: Float64Array[] = [];
  return (depth) => {
    registers[depth] ??= new Float64Array(BLOCK);
    return registers[depth];
  };
}
