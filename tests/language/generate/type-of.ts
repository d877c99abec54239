import { numberType as number, type Type } from '../../../src/language/index.ts';
import { overDimension, powerDimension, timesDimension } from '../../../src/units/index.ts';
import { type Piece, printPiece } from './piece.ts';
import { keyOf, plain, unitOf } from './quantities.ts';
import { powerOf, type Slot, signatureByName, slotsFor } from './signatures.ts';
import { worldNames } from './world.ts';

/**
 * What a piece is by the rules of the design, worked out apart from the checker: its type, the literal 0 (which fits
 * any number), or the reason it is refused. Axes are told as table names, `*` behind those of whole columns.
 */
export type Judged =
  | { readonly ok: true; readonly type: Type; readonly zero: boolean; readonly axes: ReadonlySet<string> }
  | { readonly ok: false; readonly why: string };

interface Good {
  readonly type: Type;
  readonly zero: boolean;
  readonly axes: ReadonlySet<string>;
}

class Refused extends Error {}

/** Judges a piece that stands in a column of `table`, or in a line. */
export function judge(piece: Piece, table?: string): Judged {
  try {
    return { ok: true, ...typeOf(piece, table) };
  } catch (refused) {
    if (refused instanceof Refused) return { ok: false, why: refused.message };
    throw refused;
  }
}

function refuse(why: string): never {
  throw new Refused(why);
}

const none: ReadonlySet<string> = new Set();
function united(parts: readonly Good[]): ReadonlySet<string> {
  return new Set(parts.flatMap(({ axes }) => [...axes]));
}

function typeOf(piece: Piece, table: string | undefined): Good {
  const of = (part: Piece) => typeOf(part, table);
  switch (piece.kind) {
    case 'zero':
      return { type: plain, zero: true, axes: none };
    case 'number': {
      if (piece.unit === '' || piece.unit === '%') return { type: plain, zero: false, axes: none };
      const unit = unitOf(piece.unit);
      const type: Type = unit.point
        ? { kind: 'point', of: unit.point, axes: [] }
        : number(unit.dimension, unit.angle);
      return { type, zero: false, axes: none };
    }
    case 'text':
    case 'truth':
      return { type: { kind: piece.kind, axes: [] }, zero: false, axes: none };
    case 'name':
      return nameType(piece.name, table);
    case 'negate': {
      const [operand] = piece.args.map(of) as [Good];
      if (operand.type.kind !== 'number') return refuse('the negative of no number');
      return { ...operand, zero: false };
    }
    case 'percent': {
      const [operand] = piece.args.map(of) as [Good];
      if (keyOf(operand.type) !== keyOf(plain)) return refuse('the percentage of no plain number');
      return { ...operand, zero: false };
    }
    case 'root':
      return callType('SQRT', piece.args, table);
    case 'power':
      return powerType(of(piece.args[0] as Piece), piece.exponent);
    case 'compare': {
      const [left, right] = piece.args.map(of) as [Good, Good];
      const kinds = alike([left, right]);
      if (kinds.type.kind === 'truth' && piece.op !== '=' && piece.op !== '<>')
        refuse('true and false have no order');
      return { type: { kind: 'truth', axes: [] }, zero: false, axes: united([left, right]) };
    }
    case 'binary':
      return binaryType(piece.op, piece.args.map(of) as [Good, Good]);
    case 'call':
      return callType(piece.fn, piece.args, table);
  }
}

function nameType(name: string, table: string | undefined): Good {
  const [first = '', second] = name.split('.');
  const found = worldNames.find((each) =>
    second === undefined
      ? each.name === first && (each.table === undefined || each.table === table)
      : each.table === first && each.name === second,
  );
  if (!found) return refuse(`no name ${name}`);
  const axes = second !== undefined ? new Set([`${first}*`]) : found.table ? new Set([found.table]) : none;
  return { type: found.type, zero: false, axes };
}

/** The common type of values that must be alike. */
function alike(parts: readonly Good[]): Good {
  const settled = parts.find((part) => !part.zero) ?? parts[0];
  if (!settled) return refuse('nothing to be alike');
  for (const part of parts) {
    if (part.zero && settled.type.kind === 'number') continue;
    if (keyOf(part.type) !== keyOf(settled.type)) refuse(`${keyOf(settled.type)} and ${keyOf(part.type)}`);
  }
  return { ...settled, axes: united(parts) };
}

function binaryType(op: '+' | '-' | '*' | '/' | '&', sides: readonly [Good, Good]): Good {
  const [left, right] = sides;
  const axes = united(sides);
  const [a, b] = [left.type, right.type];
  if (op === '&') {
    if (a.kind !== 'text' || b.kind !== 'text') refuse('joining what is no text');
    return { type: a, zero: false, axes };
  }
  if (op === '+' || op === '-') {
    if (a.kind === 'number' && b.kind === 'number') {
      const sum = alike(sides);
      return { ...sum, zero: false };
    }
    const gap = (point: Type) =>
      point.kind !== 'point'
        ? undefined
        : unitOf(point.of === 'temperature' ? 'K' : point.of === 'date' ? 's' : 'm').dimension;
    if (op === '-' && a.kind === 'point' && keyOf(a) === keyOf(b))
      return { type: number(gap(a) as NonNullable<ReturnType<typeof gap>>), zero: false, axes };
    const fits = (side: Good, point: Type) =>
      side.type.kind === 'number' && (side.zero || side.type.dimension.key === gap(point)?.key);
    if (a.kind === 'point' && fits(right, a)) return { type: a, zero: false, axes };
    if (op === '+' && b.kind === 'point' && fits(left, b)) return { type: b, zero: false, axes };
    return refuse(`${op} of ${keyOf(a)} and ${keyOf(b)}`);
  }
  if (a.kind !== 'number' || b.kind !== 'number') return refuse(`${op} of what is no number`);
  const dimension =
    op === '*' ? timesDimension(a.dimension, b.dimension) : overDimension(a.dimension, b.dimension);
  const scaled = op === '*' ? a.angle !== b.angle : a.angle && !b.angle;
  const bothPlain = a.dimension.key === '' && b.dimension.key === '';
  return { type: number(dimension, scaled && bothPlain), zero: false, axes };
}

function powerType(base: Good, exponent: string): Good {
  if (base.type.kind !== 'number') return refuse('a power of no number');
  const [n = 1, d = 1] = exponent.replace(/[()]/g, '').split('/').map(Number);
  const { dimension } = base.type;
  return {
    type: number(dimension.key === '' ? dimension : powerDimension(dimension, { n, d })),
    zero: false,
    axes: base.axes,
  };
}

function callType(name: string, args: readonly Piece[], table: string | undefined): Good {
  if (name === 'POWER') {
    const [base, exponent] = args as [Piece, Piece];
    const judged = typeOf(exponent, table);
    if (judged.type.kind !== 'number' || judged.type.dimension.key !== '')
      refuse('an exponent with a dimension');
    const raised = typeOf(base, table);
    const text = printPiece(exponent);
    const constant = /^-?\d+(?: \/ \d+)?$/.test(text);
    if (raised.type.kind === 'number' && raised.type.dimension.key !== '' && !constant)
      refuse('an exponent that is no constant');
    return { ...powerType(raised, constant ? text : '1'), axes: united([raised, judged]) };
  }
  const signature = signatureByName.get(name);
  if (!signature) return refuse(`no function ${name}`);
  const slots = slotsFor(signature, args.length);
  if (!slots) return refuse(`${name} takes no ${args.length} arguments`);
  const parts = args.map((arg, at) => argumentType(arg, slots[at] as Slot, table));
  const letters = new Map<string, Good[]>();
  for (const [at, slot] of slots.entries()) {
    const part = parts[at];
    if (!part) continue;
    fitsSlot(part, slot, name);
    if (/^[a-cABVW]$/.test(slot.kind)) letters.set(slot.kind, [...(letters.get(slot.kind) ?? []), part]);
  }
  for (const group of letters.values()) alike(group);
  const known = parts.filter((part): part is Good => part !== undefined);
  const axes = resultAxes(slots, parts, name, table);
  const type = resultType(signature.result, letters, slots, parts);
  if (
    name === 'PRODUCT' &&
    known.some(
      (part) =>
        hasFresh(part) &&
        keyOf(part.type) !== keyOf(plain) &&
        part.type.kind === 'number' &&
        part.type.dimension.key !== '',
    )
  )
    refuse('the product of a column with a dimension');
  if (name === 'TEXT') {
    const [value] = parts;
    const unit = unitOf(args[1]?.kind === 'text' ? args[1].text : '');
    const fits = value?.type.kind === 'number' && value.type.dimension.key === unit.dimension.key;
    if (!fits || (unit.angle && value.type.kind === 'number' && !value.type.angle))
      refuse('TEXT in a unit of another kind');
  }
  if (name === 'MATCH' || name === 'LOOKUP') {
    const choice = args[args.length - 1];
    const key = parts[0]?.type.kind;
    if (choice?.kind === 'text' && choice.text.startsWith('at ') && (key === 'text' || key === 'truth'))
      refuse('no order');
  }
  return { type, zero: false, axes };
}

const hasFresh = (part: Good) => [...part.axes].some((axis) => axis.endsWith('*'));

function argumentType(arg: Piece, slot: Slot, table: string | undefined): Good | undefined {
  if (slot.kind === 'option') return undefined;
  if (arg.kind === 'call' && arg.fn === 'KNOWN' && slot.column) return typeOf(arg.args[0] as Piece, table);
  return typeOf(arg, table);
}

function fitsSlot({ type, zero }: Good, { kind }: Slot, name: string): void {
  const isNumber = type.kind === 'number';
  const isPlain = isNumber && type.dimension.key === '';
  const fits: Readonly<Record<string, boolean>> = {
    plain: isPlain,
    unmarked: isPlain && !type.angle,
    angle: isPlain && (type.angle || zero),
    truth: type.kind === 'truth',
    text: type.kind === 'text',
    date: type.kind === 'point' && type.of === 'date',
    n: isNumber,
    any: true,
    a: isNumber,
    b: isNumber,
    c: isNumber,
    A: isNumber || type.kind === 'point',
    B: isNumber || type.kind === 'point',
    V: true,
    W: true,
  };
  if (!fits[kind]) refuse(`${name} takes no ${keyOf(type)} for ${kind}`);
}

function resultType(
  result: string,
  letters: ReadonlyMap<string, readonly Good[]>,
  slots: readonly Slot[],
  parts: readonly (Good | undefined)[],
): Type {
  const [letter = '', power] = result.split('^');
  const group = letters.get(letter);
  if (group) {
    const { type } = alike(group);
    if (power === undefined || type.kind !== 'number') return type;
    return number(powerDimension(type.dimension, powerOf(power)));
  }
  if (result === 'product') {
    const factors = parts.flatMap((part, at) =>
      part && slots[at]?.kind === 'n' && part.type.kind === 'number' ? [part.type.dimension] : [],
    );
    return number(factors.reduce(timesDimension));
  }
  const fixed: Readonly<Record<string, Type>> = {
    plain,
    angle: number(unitOf('rad').dimension, true),
    truth: { kind: 'truth', axes: [] },
    text: { kind: 'text', axes: [] },
    date: { kind: 'point', of: 'date', axes: [] },
    any: parts[0]?.type ?? plain,
  };
  return fixed[result] ?? refuse(`no result ${result}`);
}

function resultAxes(
  slots: readonly Slot[],
  parts: readonly (Good | undefined)[],
  name: string,
  table: string | undefined,
): ReadonlySet<string> {
  const axes = new Set(parts.flatMap((part) => [...(part?.axes ?? [])]));
  if (name === 'ROW' || name === 'ABOVE' || name.startsWith('RUNNING')) {
    if (table === undefined) refuse(`${name} outside a table`);
    return new Set([...axes, table]);
  }
  const gathered = new Set(
    parts.flatMap((part, at) =>
      slots[at]?.column ? [...(part?.axes ?? [])].filter((axis) => axis.endsWith('*')) : [],
    ),
  );
  for (const axis of gathered) {
    const clash = parts.some((part, at) => !slots[at]?.column && part?.axes.has(axis));
    if (clash) refuse(`${name} looks a table up in itself`);
    axes.delete(axis);
  }
  return axes;
}
