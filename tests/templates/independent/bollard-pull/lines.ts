import type { Worked } from '../program.ts';
import { type Entries, positive } from './entries.ts';
import { type Rope, ropes } from './published.ts';
import { judge, refused } from './verdicts.ts';

/** A mooring line: kN, kN/m, m; the pull of unit tension along the berth, forward, and square to it, toward the bollard. */
export interface Line {
  readonly name: string;
  readonly bollard: string;
  readonly acts: string;
  readonly isOn: boolean;
  readonly parts: number;
  /** Dry break strength of one part, wet strength of one part, and break strength of the line in use. */
  readonly dry: number;
  readonly wet: number;
  readonly strength: number;
  readonly limit: number;
  readonly axial: number;
  readonly level: number;
  /** From the normal to the berth, and below the horizontal, deg. */
  readonly horizontal: number;
  readonly vertical: number;
  readonly length: number;
  readonly stiffness: number;
  readonly along: number;
  readonly square: number;
  readonly rise: number;
  readonly x: number;
  readonly y: number;
  readonly pretension: number;
}

/** Reads the table of lines, and works out each line by itself. */
export function workLines(entries: Entries): { readonly lines: readonly Line[]; readonly worked: Worked } {
  const { number } = entries;
  const lines = (entries.rows('moor.lines') ?? []).map((row): Line => {
    const rope = ropeOf(row.text('kind'));
    const byDiameter = row.text('MBL_by') === 'diameter';
    const dry = byDiameter ? rope.strength * positive(row.number('d_r')) ** 2 : positive(row.number('MBL_s'));
    const parts = row.number('parts');
    const isFitted = row.text('tail') === 'fitted';
    const [x, y] = [row.number('x_c'), row.number('y_c')];
    const [forward, toward] = [row.number('x_b') - x, y - row.number('y_b')];
    const down = row.number('z_c') - row.number('z_b');
    const level = positive(Math.hypot(forward, toward));
    const distance = Math.hypot(level, down);
    const length = number('moor.f_L') * distance;
    const axial = rope.stiffness * dry;
    const tail = isFitted ? row.number('L_t') : 0;
    const rest = length - tail;
    const softness =
      rest < 0 || tail < 0 ? Number.NaN : rest / axial + (isFitted ? tail / positive(row.number('AE_t')) : 0);
    const onePart = isFitted ? Math.min(dry * rope.wet, positive(row.number('MBL_t'))) : dry * rope.wet;
    return {
      name: row.text('line'),
      bollard: row.text('bollard_of'),
      acts: row.text('acts'),
      isOn: row.text('on') === 'TRUE',
      parts,
      dry,
      wet: dry * rope.wet,
      strength: parts * onePart,
      limit: rope.limit * parts * dry,
      axial,
      level,
      horizontal: (Math.atan2(forward, toward) * 180) / Math.PI,
      vertical: (Math.atan2(down, level) * 180) / Math.PI,
      length,
      stiffness: parts / softness,
      along: forward / distance,
      square: toward / distance,
      rise: down / distance,
      x,
      y,
      pretension: row.number('T_0'),
    };
  });
  const column = (of: (line: Line) => number): number[] => lines.map(of);
  return {
    lines,
    worked: {
      'moor.lines.MBL': column(({ dry }) => dry),
      'moor.lines.N_w': column(({ wet }) => wet),
      'moor.lines.N_b': column(({ strength }) => strength),
      'moor.lines.F_lim': column(({ limit }) => limit),
      'moor.lines.AE': column(({ axial }) => axial),
      'moor.lines.l_h': column(({ level }) => level),
      'moor.lines.α': column(({ horizontal, level }) => horizontal + 0 * level),
      'moor.lines.τ': column(({ vertical }) => vertical),
      'moor.lines.L': column(({ length }) => length),
      'moor.lines.k': column(({ stiffness }) => stiffness),
      ...workStretch(entries, lines),
      'moor.lines.u_x': column(({ along }) => along),
      'moor.lines.u_y': column(({ square }) => square),
    },
  };
}

/** How far lines, their ropes and their tails stretch at break, in percent: fibre and wire have their bounds. */
function workStretch(entries: Entries, lines: readonly Line[]): Worked {
  const stretches = (entries.rows('moor.lines') ?? []).flatMap((row, at) => {
    const line = lines[at];
    if (!line) return [];
    const tail = positive(row.number('MBL_t')) / positive(row.number('AE_t'));
    const whole = line.strength / line.stiffness / line.length;
    return [line.dry / line.axial, whole, ...(row.text('tail') === 'fitted' ? [tail] : [])].map(
      (one) => 100 * one,
    );
  });
  const [least, most] = [Math.min(...stretches), Math.max(...stretches)];
  const fenders = entries.rows('moor.fenders')?.length ?? 0;
  return {
    'moor.ε_min': least,
    'moor.ε_max': most,
    'moor.c_stiff': Number.isNaN(least) ? refused : judge(1, least),
    'moor.c_soft': judge(most, 40),
    'moor.c_many': judge(Math.max(lines.length, fenders), 38),
  };
}

function ropeOf(kind: string): Rope {
  const rope = ropes[kind];
  if (!rope) throw new Error(`there is no rope of kind ${kind}`);
  return rope;
}

/** Whether a line shares the load off the berth, or along it, by its part in the plan. */
export const sharesOff = ({ acts }: Line): boolean => acts !== 'surge';
export const sharesAlong = ({ acts }: Line): boolean => acts !== 'sway';
