import { type Markup, none, together } from '../../markup/index.ts';
import { boxOf, type Labels } from './labels.ts';
import { coordinate } from './markup.ts';
import { between, directionOf, lengthOf, minus, type Point, plus, rotateQuarter, times } from './point.ts';
import { line } from './shapes.ts';
import { textElement, type Words, wordsWidth } from './words.ts';

const TICK = 4;

/**
 * A dimension as a drawing office sets it: the line stands `offset` to the left of the way from one point to the
 * other (clockwise from it where negative), with lines out to the points, oblique ticks and the words along it.
 */
export function dimensionLine(from: Point, to: Point, offset: number, words: Words, labels?: Labels): Markup {
  const along = directionOf(minus(to, from));
  const out = times(rotateQuarter(along), -Math.sign(offset));
  const shift = times(rotateQuarter(along), -offset);
  const a = plus(from, shift);
  const b = plus(to, shift);
  const far = Math.abs(offset) > 6;
  const outer = (point: Point): Markup =>
    far
      ? line(plus(point, times(out, 3)), plus(plus(point, shift), times(out, 4)), { class: 'dim-out' })
      : none;
  labels?.keepLineFree(a, b);
  return together(
    outer(from),
    outer(to),
    line(a, b, { class: 'dim' }),
    tick(a, along),
    tick(b, along),
    dimensionWords(a, b, words, labels),
  );
}

/** The oblique stroke at the end of a dimension line. */
function tick(at: Point, along: Point): Markup {
  const stroke = times({ x: along.x + along.y, y: along.y - along.x }, TICK * 0.75);
  return line(minus(at, stroke), plus(at, stroke), { class: 'dim-tick' });
}

/** The words above the line, turned with it, legible from below or from the right; beyond its end where it is short. */
function dimensionWords(a: Point, b: Point, words: Words, labels?: Labels): Markup {
  const width = wordsWidth(words);
  const reading = a.x < b.x - 1e-6 || (Math.abs(a.x - b.x) <= 1e-6 && a.y > b.y);
  const [first, last] = reading ? [a, b] : [b, a];
  const along = directionOf(minus(last, first));
  const up = times(rotateQuarter(along), -4);
  const fits = lengthOf(minus(last, first)) > width + 10;
  const middle = fits ? between(first, last) : plus(last, times(along, width / 2 + 8));
  const place = plus(middle, fits ? up : times(rotateQuarter(along), 4));
  const angle = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  if (Math.abs(angle) < 0.01) {
    const spot = { ...place, anchor: 'middle' as const };
    labels?.keepFree(boxOf(words, spot));
    return textElement(words, spot);
  }
  const lead = times(along, width / 2);
  labels?.keepLineFree(minus(place, lead), plus(place, lead));
  return textElement(
    words,
    { ...place, anchor: 'middle' },
    { transform: `rotate(${coordinate(angle)} ${coordinate(place.x)} ${coordinate(place.y)})` },
  );
}
