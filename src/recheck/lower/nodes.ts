import { type BlankNode, type CellNode, comparedSides, type Typed } from '../../language/index.ts';
import { address } from '../grid.ts';
import type { RecheckEntry } from '../program.ts';
import { lowerCall } from './calls.ts';
import { lowerComparison } from './comparison.ts';
import type { Lowerer } from './lowerer.ts';
import { giveUp } from './obstacle.ts';
import { type BookPlan, FIRST_ROW, placeOf, REFUSED, tableOf } from './plan.ts';
import { lowerSeries } from './series.ts';
import type { Site } from './site.ts';

type LowerNode<K extends Typed['kind']> = (
  node: Extract<Typed, { kind: K }>,
  site: Site,
  lowerer: Lowerer,
) => string;

/** How each kind of node is written as a plain formula, every precedence in parentheses. */
const nodes: { readonly [K in Typed['kind']]: LowerNode<K> } = {
  number: (node, _, { plan: { constants } }) => {
    const written = constants.number(node.written);
    if (!node.unit) return written;
    const cells = constants.unit(node.unit);
    if (!cells) return giveUp(`the factor of ${node.unit.text} is not in the independent table`);
    return scaleToSI(written, cells);
  },
  text: (node, _, { plan }) => plan.constants.number(plan.texts.codeOf(node.text)),
  truth: (node, _, { plan }) => plan.constants.truth(node.value),
  cell: (node, site, { plan }) => cellAddress(node, plan, site.row),
  column: (node, site, { plan }) => {
    const place = placeOf(plan, node.id);
    const fresh = site.fresh.get(node.type.axes[0]?.table ?? '');
    if (!fresh) throw new Error(`${node.id} stands as a whole column where one value is wanted`);
    return address(place.sheet.name, place.row + fresh.row, place.column, fresh.moving);
  },
  negate: (node, site, { lower }) => `(-${lower(node.operand, site)})`,
  percent: (node, site, { lower, plan }) => `(${lower(node.operand, site)}/${plan.constants.number(100)})`,
  arithmetic: (node, site, { lower }) => `(${lower(node.left, site)}${node.op}${lower(node.right, site)})`,
  power: (node, site, { lower }) => `(${lower(node.base, site)}^${lower(node.exponent, site)})`,
  compare: (node, site, { operand, plan }) => {
    const sides = comparedSides(node);
    const [left, right] = sides.map((side) => operand(side, site)) as [string, string];
    const exact = sides[0].type.kind === 'text' || sides[0].type.kind === 'truth';
    return exact ? `(${left}${node.op}${right})` : lowerComparison(node.op, left, right, plan.constants);
  },
  join: () => giveUp('texts stand as codes in the recheck, and codes do not join'),
  branch: (node, site, { lower, shortened }) =>
    node.arms.reduceRight(
      (rest, arm) => `IF(${lower(arm.when, site)},${lower(arm.value, site)},${shortened(rest, site)})`,
      node.otherwise ? lower(node.otherwise, site) : REFUSED,
    ),
  above: (node, site, { lower, plan }) =>
    site.row === 0
      ? lower(node.first, site)
      : cellAddress(node.column, plan, site.row === undefined ? undefined : site.row - 1),
  row: (_, site, { plan, table }) =>
    address(tableOf(plan, table ?? '').sheet.name, FIRST_ROW + (site.row ?? 0), 0, true),
  blank: (node, site, { plan }) => blankness(node, site, plan),
  known: () => {
    throw new Error('KNOWN stands outside an aggregate');
  },
  series: lowerSeries,
  call: lowerCall,
  broken: () => REFUSED,
};

/** One part of a formula as formula text. */
export function lowerNode(node: Typed, site: Site, lowerer: Lowerer): string {
  return (nodes[node.kind] as LowerNode<Typed['kind']>)(node, site, lowerer);
}

/** A number times the factor of its unit, and for a temperature plus its offset, each from its own cell. */
export function scaleToSI(
  written: string,
  cells: { readonly factor?: string; readonly offset?: string },
): string {
  if (cells.factor === undefined) return written;
  const product = `${written}*${cells.factor}`;
  return cells.offset === undefined ? `(${product})` : `((${product})+${cells.offset})`;
}

function cellAddress(node: CellNode, plan: BookPlan, row: number | undefined): string {
  const place = placeOf(plan, node.id);
  const inTable = node.type.axes.length > 0;
  if (inTable && row === undefined) throw new Error(`${node.id} has no row where it is read`);
  return address(place.sheet.name, place.row + (inTable ? (row ?? 0) : 0), place.column, inTable);
}

/** Only an entry can be blank; a formula's value is none, and one that fails is neither blank nor filled. */
function blankness(node: BlankNode, site: Site, plan: BookPlan): string {
  const { cell } = placeOf(plan, node.cell.id);
  if (cell.kind === 'formula') {
    const value = cellAddress(node.cell, plan, site.row);
    return `(${value}<>${value})`;
  }
  const entry: RecheckEntry | undefined = cell.kind === 'input' ? cell.entry : cell.entries[site.row ?? 0];
  if (entry?.kind === 'failed') return REFUSED;
  return plan.constants.truth(entry === undefined || entry.kind === 'missing');
}
