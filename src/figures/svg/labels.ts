import { type Attributes, type Markup, none } from '../../markup/index.ts';
import { between, lengthOf, minus, type Point } from './point.ts';
import { LETTER, textElement, type Words, wordsWidth } from './words.ts';

/** A rectangle that is taken. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A place for a label: the end of its base line that `anchor` says. */
export interface Spot extends Point {
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** The room words take at a spot. */
export function boxOf(words: Words, spot: Spot, size = LETTER): Box {
  const width = wordsWidth(words, size);
  const { anchor = 'start' } = spot;
  const x = anchor === 'start' ? spot.x : anchor === 'end' ? spot.x - width : spot.x - width / 2;
  return { x, y: spot.y - size * 0.8, width, height: size * 1.08 };
}

/** Puts labels where nothing stands yet. */
export interface Labels {
  /** Keeps a rectangle free of labels. */
  readonly keepFree: (box: Box) => void;
  /** Keeps a straight line free of labels. */
  readonly keepLineFree: (from: Point, to: Point) => void;
  /** The label at the first spot with room, else at the one least crowded; kept free from then on. */
  readonly put: (words: Words, spots: readonly Spot[], attributes?: Attributes) => Markup;
  /** The same, but no label at all where there is no room. */
  readonly putIfRoom: (words: Words, spots: readonly Spot[], attributes?: Attributes) => Markup | undefined;
}

/** Labels on a sheet of this size. */
export function createLabels(width: number, height: number): Labels {
  const taken: Box[] = [];
  const crowding = (box: Box): number => {
    const beyond =
      Math.max(0, -box.x) +
      Math.max(0, box.x + box.width - width) +
      Math.max(0, -box.y) +
      Math.max(0, box.y + box.height - height);
    return taken.reduce((sum, other) => sum + overlap(box, other), beyond * 100);
  };
  const best = (words: Words, spots: readonly Spot[]) => {
    let found: { spot: Spot; box: Box; crowd: number } | undefined;
    for (const spot of spots) {
      const box = boxOf(words, spot);
      const crowd = crowding(box);
      if (!found || crowd < found.crowd - 1e-9) found = { spot, box, crowd };
      if (crowd === 0) break;
    }
    return found;
  };
  const set = (words: Words, spots: readonly Spot[], attributes: Attributes, crowded: boolean) => {
    const found = best(words, spots);
    if (!found || (!crowded && found.crowd > 0)) return undefined;
    taken.push(found.box);
    return textElement(words, found.spot, attributes);
  };
  return {
    keepFree: (box) => taken.push(box),
    keepLineFree: (from, to) => {
      const steps = Math.max(1, Math.ceil(lengthOf(minus(to, from)) / 4));
      for (let step = 0; step <= steps; step += 1) {
        const { x, y } = between(from, to, step / steps);
        taken.push({ x: x - 1.5, y: y - 1.5, width: 3, height: 3 });
      }
    },
    put: (words, spots, attributes = {}) => set(words, spots, attributes, true) ?? none,
    putIfRoom: (words, spots, attributes = {}) => set(words, spots, attributes, false),
  };
}

function overlap(a: Box, b: Box): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return width > 0 && height > 0 ? width * height : 0;
}

/** Spots all round a point at a distance, the best ones first. */
export function spotsAround(point: Point, gap: number): readonly Spot[] {
  const { x, y } = point;
  return [
    { x: x + gap, y: y + 4 },
    { x: x - gap, y: y + 4, anchor: 'end' },
    { x, y: y - gap, anchor: 'middle' },
    { x, y: y + gap + 9, anchor: 'middle' },
    { x: x + gap, y: y - gap },
    { x: x + gap, y: y + gap + 8 },
    { x: x - gap, y: y - gap, anchor: 'end' },
    { x: x - gap, y: y + gap + 8, anchor: 'end' },
  ];
}
