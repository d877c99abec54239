import { fail, type Problem, succeed } from '../../diagnostics/index.ts';
import { type Markup, none, together } from '../../markup/index.ts';
import { type Amount, amountText, amountWords, valueText } from '../cells/amount.ts';
import { type Amounts, needed, type Texts, wanted, wantedColumn, wantedTexts } from '../cells/role.ts';
import { dimensionLine } from '../svg/dimension-line.ts';
import { waterMark } from '../svg/ground.ts';
import { createHatches, type Hatches, hatchOfSoil } from '../svg/hatches.ts';
import { box, line } from '../svg/shapes.ts';
import { spread } from '../svg/spread.ts';
import { strong, symbol, text, textElement, wordsWidth } from '../svg/words.ts';
import { amountSentence, notAboveZero, outOfBounds } from './bounds.ts';
import { figureKind } from './kind.ts';
import { depthDiagrams } from './pile-diagrams.ts';

const TOP = 66;
const TALL = 400;
const LEVELS = 152;
const SECTION = 176;

/** A pile in the ground with levels, layers and lengths to one vertical scale, and what the ground gives beside it. */
export const pileProfile = figureKind({
  name: 'pile-profile',
  title: 'Pile and ground',
  roles: {
    cutoff: needed('level', 'the level of the pile head'),
    mudline: needed('level', 'the level of the mudline'),
    embedded: needed('length', 'the length of the pile below the mudline'),
    diameter: needed('length', 'the diameter of the pile'),
    water: wanted('level', 'the level of the water'),
    free: wanted('length', 'the length of the pile above the mudline'),
    soil: wantedTexts('the soils of the layers'),
    top: wantedColumn('length', 'the depth of the top of each layer'),
    bottom: wantedColumn('length', 'the depth of the bottom of each layer'),
    resistance: wantedColumn('force', 'the friction of each layer'),
    friction: wantedColumn('stress', 'the unit friction with depth'),
    frictionDepth: wantedColumn('length', 'the depths of the friction'),
    capacity: wantedColumn('force', 'the capacity with depth'),
    capacityDepth: wantedColumn('length', 'the depths of the capacity'),
    demand: wanted('force', 'the demand on the pile'),
    neededLength: wanted('length', 'the length that meets the demand'),
  },
  draw: (cells, id) => {
    const { cutoff, mudline, embedded, diameter, water, free } = cells;
    const [first, ...others] = problemsOf(embedded, diameter, cutoff, mudline);
    if (first) return fail(first, ...others);
    const layers = layersOf(cells.soil, cells.top, cells.bottom);
    const deepest = Math.max(embedded.si, ...layers.map((layer) => layer.bottom));
    const highest = Math.max(0, cutoff.si - mudline.si, (water?.si ?? mudline.si) - mudline.si);
    const scale = TALL / (deepest * 1.02 + highest);
    /** The page's height of a depth below the mudline, in metres. */
    const y = (depth: number): number => TOP + (depth + highest) * scale;
    const hatches = createHatches(id);
    const diagrams = depthDiagrams(cells, y, deepest, 500);
    const right = diagrams.drawn ? 344 : 470;
    const centre = SECTION + (right - SECTION) * 0.46;
    const head = mudline.si - cutoff.si;
    const width = Math.min(70, Math.max(5, diameter.si * scale));
    const levels = [
      { words: `cut-off ${amountText(cutoff)}`, depth: head },
      ...(water ? [{ words: `water ${amountText(water)}`, depth: mudline.si - water.si }] : []),
      { words: `mudline ${amountText(mudline)}`, depth: 0 },
      { words: `tip ${valueText(mudline.si - embedded.si, mudline.unit)}`, depth: embedded.si },
    ];
    const body = [
      ...layers.map((layer) => layerArea(layer, y, right, hatches)),
      ...(water ? [waterLine(y(mudline.si - water.si), right)] : []),
      line({ x: SECTION, y: y(0) }, { x: right, y: y(0) }, { class: 'face', 'data-part': 'mudline' }),
      box(
        { x: centre - width / 2, y: y(head) },
        { x: centre + width / 2, y: y(embedded.si) },
        { class: 'body', 'data-part': 'pile' },
      ),
      line({ x: centre, y: y(head) - 18 }, { x: centre, y: y(embedded.si) + 10 }, { class: 'center' }),
      deck(centre, y(head), hatches),
      levelLabels(levels, y),
      lengths(free, embedded, y, right, head),
      layerLabels(layers, cells.resistance, y, right),
      diagrams.markup,
    ];
    const drawnWidth = diameter.si * scale;
    const notes = [
      ...(Math.abs(drawnWidth - width) > 0.5
        ? [`The width of the pile is not to scale (${diameter.name} = ${amountText(diameter)}).`]
        : []),
      ...diagrams.notes,
    ];
    return succeed({
      height: y(deepest) + 34,
      definitions: hatches.definitions(),
      body: together(body),
      notes,
      description: `Pile in the ground, levels and layers to scale. ${amountSentence(cutoff, water, mudline, free, embedded, diameter, cells.demand, cells.neededLength)}`,
      table: {
        head: ['what', 'from', 'to'],
        rows: [
          ...levels.map(({ words }) => [words, '', '']),
          ...layers.map((layer) => [
            layer.soil,
            valueText(layer.top, embedded.unit),
            valueText(layer.bottom, embedded.unit),
          ]),
        ],
      },
    });
  },
});

function problemsOf(embedded: Amount, diameter: Amount, cutoff: Amount, mudline: Amount): readonly Problem[] {
  const datums = (cutoff.unit.point ?? '') === (mudline.unit.point ?? '');
  return [
    ...notAboveZero(embedded, diameter),
    ...(cutoff.si < mudline.si - embedded.si
      ? [outOfBounds(cutoff, 'it lies below the tip of the pile')]
      : []),
    ...(datums ? [] : [outOfBounds(mudline, `it has another datum than ${cutoff.id}`)]),
  ];
}

/** A layer: its soil, and its top and bottom below the mudline in metres. */
interface Layer {
  readonly soil: string;
  readonly row: number;
  readonly top: number;
  readonly bottom: number;
}

/** The layers that have a soil and a thickness below the mudline. */
function layersOf(
  soil: Texts | undefined,
  top: Amounts | undefined,
  bottom: Amounts | undefined,
): readonly Layer[] {
  if (!top || !bottom) return [];
  return top.values.flatMap((value, row) => {
    const from = Math.max(0, value);
    const to = bottom.values[row] ?? Number.NaN;
    return to > from ? [{ soil: soil?.values[row] ?? '', row, top: from, bottom: to }] : [];
  });
}

function layerArea(layer: Layer, y: (depth: number) => number, right: number, hatches: Hatches): Markup {
  const from = { x: SECTION, y: y(layer.top) };
  const to = { x: right, y: y(layer.bottom) };
  return together(
    box(from, to, { fill: hatches.fill(hatchOfSoil(layer.soil)), 'data-soil': layer.soil }),
    line({ x: SECTION, y: to.y }, to, { class: 'thin' }),
  );
}

function waterLine(at: number, right: number): Markup {
  return together(
    line({ x: SECTION, y: at }, { x: right, y: at }, { class: 'water', 'data-part': 'water' }),
    waterMark({ x: right - 22, y: at }),
  );
}

/** A deck on the head of the pile; a sign, not to scale. */
function deck(centre: number, head: number, hatches: Hatches): Markup {
  const from = { x: centre - 52, y: head - 9 };
  const to = { x: centre + 52, y: head };
  return together(
    box(from, to, { class: 'body' }),
    box(from, to, { fill: hatches.fill('concrete') }),
    box(from, to, { class: 'outline' }),
  );
}

/** The levels at the left, moved apart where they are close, each with a line to its height. */
function levelLabels(
  levels: readonly { readonly words: string; readonly depth: number }[],
  y: (depth: number) => number,
): Markup {
  const heights = levels.map(({ depth }) => y(depth));
  const places = spread(heights, 16, 20, TOP + TALL + 20);
  return together(
    levels.map(({ words }, at) => {
      const height = heights[at] ?? 0;
      const place = places[at] ?? height;
      return together(
        textElement(text(words), { x: LEVELS, y: place + 4, anchor: 'end' }),
        line({ x: LEVELS + 4, y: place }, { x: LEVELS + 14, y: height }, { class: 'leader' }),
        line({ x: LEVELS + 14, y: height }, { x: SECTION, y: height }, { class: 'leader' }),
      );
    }),
  );
}

/** The lengths above and below the mudline, beside the ground. */
function lengths(
  free: Amount | undefined,
  embedded: Amount,
  y: (depth: number) => number,
  right: number,
  head: number,
): Markup {
  const at = (depth: number) => ({ x: right, y: y(depth) });
  const below = dimensionLine(at(embedded.si), at(0), -22, amountWords(embedded));
  if (!free || head >= 0) return below;
  const room = y(0) - y(head) > wordsWidth(amountWords(free)) + 8;
  const words = room ? amountWords(free) : [];
  const beside = room ? none : textElement(amountWords(free), { x: right + 30, y: (y(0) + y(head)) / 2 + 4 });
  return together(below, dimensionLine(at(0), at(head), -22, words), beside);
}

/** What each layer is, beside it: its soil, its thickness and its friction. */
function layerLabels(
  layers: readonly Layer[],
  resistance: Amounts | undefined,
  y: (depth: number) => number,
  right: number,
): Markup {
  const middles = layers.map((layer) => (y(layer.top) + y(layer.bottom)) / 2);
  const lines = resistance ? 2 : 1;
  const places = spread(middles, lines * 15 + 4, y(0) + lines * 8, TOP + TALL + 8);
  const x = right + 34;
  return together(
    layers.map((layer, at) => {
      const middle = middles[at] ?? 0;
      const place = places[at] ?? middle;
      const first = place + 4 - (lines - 1) * 7.5;
      const value = resistance?.values[layer.row];
      const friction =
        resistance && value !== undefined && !Number.isNaN(value)
          ? textElement([...symbol(resistance.name), ...text(` = ${valueText(value, resistance.unit)}`)], {
              x,
              y: first + 15,
            })
          : none;
      const moved = Math.abs(place - middle) > 3;
      return together(
        textElement(strong(shortened(layer.soil, 18)), { x, y: first }),
        friction,
        moved ? line({ x: right + 2, y: middle }, { x: x - 4, y: place }, { class: 'leader' }) : none,
      );
    }),
  );
}

function shortened(words: string, most: number): string {
  return words.length > most ? `${words.slice(0, most - 1)}…` : words;
}
