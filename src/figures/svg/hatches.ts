import { type Markup, none, together } from '../../markup/index.ts';
import { tag } from './markup.ts';

/** A way of filling an area with strokes; `size` is the tile, `strokes` what stands in it. */
interface Hatch {
  readonly size: readonly [width: number, height: number];
  readonly turn?: number;
  readonly strokes: Markup;
  /** The words of a soil that is drawn so. */
  readonly soils?: RegExp;
}

const stroke = (d: string, name = 'hatch'): Markup => tag('path', { class: name, d });
const dot = (cx: number, cy: number, r: number, name = 'hatch-dot'): Markup =>
  tag('circle', { class: name, cx, cy, r });

/** The hatches, by name; the first whose `soils` fits a soil's words is its hatch. */
const hatches = {
  rock: {
    size: [16, 12],
    strokes: stroke('M0 0H16M0 6H16M4 0V6M12 6V12'),
    soils: /rock|stone|shale|granite|coral/i,
  },
  gravel: {
    size: [13, 12],
    strokes: together(dot(3.5, 3, 1.8, 'hatch'), dot(9.5, 9, 2.3, 'hatch')),
    soils: /gravel|cobble|rubble|ballast/i,
  },
  sand: {
    size: [9, 9],
    strokes: together(dot(2, 2, 0.7), dot(6.5, 4.5, 0.6), dot(3.5, 7.5, 0.7)),
    soils: /sand/i,
  },
  silt: { size: [12, 8], strokes: stroke('M1 2H6M7 6H12'), soils: /silt|mud/i },
  clay: { size: [7, 7], turn: 45, strokes: stroke('M0 0V7'), soils: /clay/i },
  peat: { size: [12, 10], strokes: stroke('M1 4q2 -3 4 0M7 9q2 -3 4 0'), soils: /peat|organic/i },
  fill: { size: [9, 9], turn: 45, strokes: stroke('M0 0V9M0 0H9'), soils: /fill/i },
  other: { size: [12, 12], turn: -45, strokes: stroke('M0 0V12') },
  concrete: { size: [10, 10], strokes: together(dot(2, 7, 0.6), stroke('M6 2l1.6 2.6h-3.2Z')) },
  fails: { size: [4, 4], turn: 45, strokes: stroke('M0 0V4', 'hatch-bad') },
  second: { size: [4, 4], turn: 45, strokes: stroke('M0 0V4', 'hatch-strong') },
  third: { size: [4, 4], strokes: dot(2, 2, 0.9) },
} as const satisfies Readonly<Record<string, Hatch>>;

/** The name of a hatch. */
export type HatchName = keyof typeof hatches;

/** The hatch of a soil, by the words it is called. */
export function hatchOfSoil(soil: string): HatchName {
  const found = Object.entries<Hatch>(hatches).find(([, hatch]) => hatch.soils?.test(soil));
  return (found?.[0] as HatchName | undefined) ?? 'other';
}

/** The hatches one drawing uses; their ids begin with the id of its part, so that they are unique on a page. */
export interface Hatches {
  /** What an element's `fill` says to be filled with a hatch. */
  readonly fill: (name: HatchName) => string;
  /** The definitions of what was used. */
  readonly definitions: () => Markup;
}

export function createHatches(partId: string): Hatches {
  const used = new Set<HatchName>();
  const idOf = (name: HatchName): string => `${partId}-hatch-${name}`;
  return {
    fill: (name) => {
      used.add(name);
      return `url(#${idOf(name)})`;
    },
    definitions: () => {
      const patterns = [...used].map((name) => {
        const { size, strokes, turn }: Hatch = hatches[name];
        return tag(
          'pattern',
          {
            id: idOf(name),
            width: size[0],
            height: size[1],
            patternUnits: 'userSpaceOnUse',
            patternTransform: turn === undefined ? undefined : `rotate(${turn})`,
          },
          strokes,
        );
      });
      return patterns.length === 0 ? none : tag('defs', {}, patterns);
    },
  };
}
