import type { Amounts, Texts } from '../cells/role.ts';
import type { Point } from '../svg/point.ts';

/** A mooring line: its ends in metres (x forward, y across), its tension in newtons. */
export interface MooringLine {
  readonly name: string;
  readonly fairlead: Point;
  readonly bollard: Point;
  readonly tension?: number;
  readonly utilisation?: number;
  /** It pulls nothing. */
  readonly slack: boolean;
  /** It is the first of those with the greatest share of their strength, or the greatest tension where none is known. */
  readonly governs: boolean;
  /** How many lines with the same ends come before it. */
  readonly shift: number;
}

interface LineColumns {
  readonly line: Texts;
  readonly fairleadX: Amounts;
  readonly fairleadY: Amounts;
  readonly bollardX: Amounts;
  readonly bollardY: Amounts;
  readonly tension: Amounts | undefined;
  readonly utilisation: Amounts | undefined;
}

/** The rows of the table of lines that have both ends, and the names of those that have not. */
export function mooringLines(columns: LineColumns): {
  readonly lines: readonly MooringLine[];
  readonly homeless: readonly string[];
} {
  const { line, fairleadX, fairleadY, bollardX, bollardY, tension, utilisation } = columns;
  const homeless: string[] = [];
  const governing = greatestRow((utilisation ?? tension)?.values ?? []);
  const met = new Map<string, number>();
  const lines = fairleadX.values.flatMap((x, row): readonly MooringLine[] => {
    const name = line.values[row] ?? `row ${row + 1}`;
    const fairlead = { x, y: fairleadY.values[row] ?? Number.NaN };
    const bollard = { x: bollardX.values[row] ?? Number.NaN, y: bollardY.values[row] ?? Number.NaN };
    const ends = [fairlead.x, fairlead.y, bollard.x, bollard.y];
    if (!ends.every(Number.isFinite)) {
      homeless.push(name);
      return [];
    }
    const key = ends.map((end) => end.toFixed(3)).join(' ');
    const shift = met.get(key) ?? 0;
    met.set(key, shift + 1);
    const force = known(tension?.values[row]);
    const used = known(utilisation?.values[row]);
    return [
      {
        name,
        fairlead,
        bollard,
        shift,
        governs: row === governing,
        slack: force !== undefined && force <= 0,
        ...(force !== undefined && { tension: force }),
        ...(used !== undefined && { utilisation: used }),
      },
    ];
  });
  return { lines, homeless };
}

function known(value: number | undefined): number | undefined {
  return value === undefined || Number.isNaN(value) ? undefined : value;
}

/** The first row with the greatest value above zero. */
function greatestRow(values: readonly number[]): number | undefined {
  let best: number | undefined;
  values.forEach((value, row) => {
    if (value > 0 && (best === undefined || value > (values[best] ?? 0))) best = row;
  });
  return best;
}
