import { type Markup, together } from '../../markup/index.ts';
import { type Amount, amountWords } from '../cells/amount.ts';
import { type Labels, type Spot, spotsAround } from '../svg/labels.ts';
import { type Point, plus, polar } from '../svg/point.ts';
import { arc, arrow, arrowHead, circle } from '../svg/shapes.ts';

interface Forces {
  readonly forceX: Amount | undefined;
  readonly forceY: Amount | undefined;
  readonly moment: Amount | undefined;
}

/**
 * What acts on the ship at its middle: forces along (forward) and across (off the berth) as arrows of one scale, the
 * moment as a turning arrow. `way` is -1 where the plan is turned half round; `reach` is half the breadth on the page.
 */
export function forcesOnShip(
  centre: Point,
  forces: Forces,
  { way, reach }: { readonly way: 1 | -1; readonly reach: number },
  labels: Labels,
): Markup {
  const longest = Math.min(80, Math.max(40, reach + 20));
  const { forceX, forceY, moment } = forces;
  const greatest = Math.max(Math.abs(forceX?.si ?? 0), Math.abs(forceY?.si ?? 0));
  const body: Markup[] = [];
  const force = (amount: Amount | undefined, x: number, y: number): void => {
    if (!amount || amount.si === 0 || greatest === 0) return;
    const size = Math.max(14, (longest * Math.abs(amount.si)) / greatest);
    const sign = Math.sign(amount.si) * way;
    const tip = { x: centre.x + x * sign * size, y: centre.y + y * sign * size };
    body.push(arrow(centre, tip, 'load'));
    labels.keepLineFree(centre, tip);
    const beside: readonly Spot[] =
      y !== 0
        ? spotsAround(tip, 8)
        : [
            { x: tip.x, y: tip.y + 17, anchor: sign > 0 ? 'start' : 'end' },
            { x: tip.x, y: tip.y - 7, anchor: sign > 0 ? 'start' : 'end' },
            ...spotsAround(tip, 8),
          ];
    body.push(labels.put(amountWords(amount), beside, { class: 'accent-text halo' }));
  };
  force(forceX, 1, 0);
  force(forceY, 0, 1);
  if (moment && moment.si !== 0) {
    const r = 22;
    const turn = Math.sign(moment.si);
    const from = -Math.PI / 2 - turn * 0.9;
    const to = -Math.PI / 2 + turn * 0.9;
    const tip = plus(centre, polar(r, to));
    body.push(arc(centre, r, from, to, { class: 'load' }));
    body.push(
      arrowHead(plus(tip, polar(4, to + (turn * Math.PI) / 2)), polar(1, to + (turn * Math.PI) / 2), {
        class: 'load-head',
      }),
    );
    labels.keepFree({ x: centre.x - r, y: centre.y - r - 3, width: 2 * r, height: 12 });
    const beside = plus(centre, polar(r + 6, -Math.PI / 2 - turn * 0.9));
    body.push(
      labels.put(
        amountWords(moment),
        [
          { x: beside.x - turn * 6, y: beside.y + 6, anchor: turn > 0 ? 'end' : 'start' },
          { x: centre.x + turn * (r + 10), y: centre.y - 10, anchor: turn > 0 ? 'start' : 'end' },
          ...spotsAround({ x: centre.x, y: centre.y - r }, 12),
        ],
        { class: 'accent-text halo' },
      ),
    );
  }
  body.push(circle(centre, 3, { class: 'dot' }));
  return together(body);
}
