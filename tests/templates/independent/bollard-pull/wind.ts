import type { Verdict, Worked } from '../program.ts';
import { type Entries, notNegative, positive } from './entries.ts';
import {
  type Direction,
  type Force,
  forceAtPerpendiculars,
  type Heading,
  headingOf,
  knot,
  otherDirections,
  sineOf,
} from './flow.ts';
import { readCurve, windCurves } from './published.ts';
import { leastSideArea, type Ship } from './ship.ts';
import { tabulated } from './tables.ts';
import { doesNotApply, judge, judgeTruth } from './verdicts.ts';

/** Works out the wind on the ship by the form that was chosen, from the direction entered and from each other one. */
export function workWind(
  entries: Entries,
  ship: Ship,
): { readonly force: Force; readonly others: readonly Direction[]; readonly worked: Worked } {
  const { number, text } = entries;
  const atTen = number('wind.V_h') * (10 / number('wind.h_w')) ** (1 / 7);
  const [entered, wanted] = [gustRatio(number('wind.t_1')), gustRatio(number('wind.t_2'))];
  const averaging = wanted / entered;
  const knots = atTen * averaging * number('wind.f_e');
  const isUfc = text('wind.method') === 'UFC';
  const { force, worked, areas } = forceFrom(entries, ship, headingOf(number('wind.θ_w')), knots);
  const asked = otherDirections(entries, 'wind.from');
  const others = asked.map(({ angle, part }): Direction => {
    return { angle, force: forceFrom(entries, ship, headingOf(angle), knots * part).force };
  });
  return {
    force,
    others,
    worked: {
      'wind.c_areas': isUfc ? areas : doesNotApply,
      'wind.c_high':
        isUfc && number('wind.A_S') > 0 ? judge(number('wind.h_H'), number('wind.h_S')) : doesNotApply,
      'wind.V_10': atTen,
      'wind.G_1': entered,
      'wind.G_2': wanted,
      'wind.f_t': averaging,
      // UFC 4-159-03 (2005), 3-8.1: a ship responds to half a minute; a minute is the most that is common.
      'wind.c_gust': judge(number('wind.t_2'), 60),
      'wind.V_w': knots * knot,
      'wind.c_V': judge(number('wind.V_m'), knots),
      ...workKind(entries, ship),
      ...worked,
      'wind.c_Cy': isUfc
        ? judge(Number(worked['wind.C_yn'] ?? Number.NaN), Number(worked['wind.C_yw'] ?? Number.NaN))
        : doesNotApply,
      ...workProduct(entries, ship, worked),
      // A wind from another direction is one to design for as well.
      'wind.c_Vp':
        asked.length === 0
          ? doesNotApply
          : judge(number('wind.V_m'), Math.min(...asked.map(({ part }) => part * knots))),
      'wind.n_d': asked.length,
      ...workRound(
        number('wind.θ_w'),
        asked.map(({ angle }) => angle),
      ),
      'wind.from.F_Xi': others.map((one) => one.force.along),
      'wind.from.F_Yi': others.map((one) => one.force.off),
      'wind.from.M_i': others.map((one) => one.force.moment),
    },
  };
}

/** California Building Code ch. 31F, 3103F.5.2.1.2: eight directions, so that no gap is wider than 45 deg. */
function workRound(entered: number, others: readonly number[]): Worked {
  const angles = [entered, ...others];
  const gaps = angles.map((angle) => {
    const beyond = angles.filter((other) => other > angle);
    return beyond.length > 0 ? Math.min(...beyond) - angle : 360 + Math.min(...angles) - angle;
  });
  const widest = Math.max(...gaps);
  return {
    'wind.from.g_i': gaps.slice(1),
    'wind.g_0': gaps[0] ?? Number.NaN,
    'wind.g_m': widest,
    'wind.c_round': judge(widest, 45),
  };
}

/** Whether the coefficients chosen are those of her kind. */
function workKind({ number, text }: Entries, { kind }: Ship): Worked {
  const method = text('wind.method');
  return {
    'wind.c_kind': method === 'OCIMF' ? judgeTruth(kind.isAsTanker) : doesNotApply,
    'wind.c_Cb': method === 'general' ? judge(kind.wind, number('wind.C_wb')) : doesNotApply,
    'wind.c_Cγ': method === 'unit weight' ? judge(kind.wind, number('wind.C_γ')) : doesNotApply,
  };
}

/** Whether what catches the wind abeam, coefficient times area, is that of a ship of her kind and size. */
function workProduct(entries: Entries, ship: Ship, worked: Worked): Worked {
  const { number, text, stated } = entries;
  const method = text('wind.method');
  const both = (['CA', 'CF'] as const).map((name) => readWindCurve(entries, name, 90));
  const tankers = both.reduce((sum, one) => sum + one, 0);
  const byUfc = [worked['wind.C_yw'], worked['wind.C_yn']].map((one) => Number(one ?? Number.NaN)) as [
    number,
    number,
  ];
  const [used, least] =
    method === 'UFC'
      ? byUfc
      : method === 'OCIMF'
        ? [tankers, ship.kind.wind]
        : [number(method === 'general' ? 'wind.C_wb' : 'wind.C_γ'), ship.kind.wind];
  // Common practice: means of the two lie some 15 % above their least, both together by three tenths; a form brings its own.
  const wanted =
    (stated('wind.k_CA') ?? (['UFC', 'OCIMF'].includes(method) ? 1.15 : 1.3)) *
    leastSideArea(ship, notNegative(number('ship.D_m') - ship.draught)) *
    least;
  // Dry air of 30 °C at 1013 hPa, kg/m³; its weight in kN/m³.
  const leastDensity = stated('wind.ρ_n') ?? 1.16;
  const leastWeight = (leastDensity * ship.gravity) / 1000;
  return {
    'wind.C_90': tankers,
    'wind.C_u': used,
    'wind.C_l': least,
    // Every form reads the density, along the ship at least; that of the unit weight reads that as well.
    'wind.c_ρ': judge(leastDensity, number('wind.ρ_a')),
    'wind.γ_n': leastWeight,
    'wind.c_γa': method === 'unit weight' ? judge(leastWeight, number('wind.γ_a')) : doesNotApply,
    'wind.A_Cn': wanted,
    'wind.c_CA': wanted === 0 ? judgeTruth(true) : judge(wanted, used * ship.sideArea),
  };
}

/** The force of a wind of so many knots from one direction. */
function forceFrom(
  entries: Entries,
  ship: Ship,
  heading: Heading,
  knots: number,
): { readonly force: Force; readonly areas: Verdict; readonly worked: Worked } {
  const { number, text } = entries;
  const air = number('wind.ρ_a');
  const speed = knots * knot;
  const pressure = (air * speed ** 2) / 2000;
  const general = generalForm(entries, ship, heading, pressure);
  const ufc = ufcForm(entries, ship, heading);
  const tankerPressure = text('wind.form') === 'SI' ? pressure : (air * knots ** 2) / 7600;
  const tanker = tankerForm(entries, ship, heading, tankerPressure);
  const byWeight =
    (number('wind.C_γ') *
      ship.sideArea *
      heading.sine ** 2 *
      number('wind.γ_a') *
      speed ** 2 *
      heading.side) /
    (2 * ship.gravity);
  const method = text('wind.method');
  const along =
    method === 'OCIMF'
      ? tanker.force.along
      : method === 'UFC'
        ? pressure * ship.frontArea * ufc.along
        : general.along;
  const off =
    method === 'OCIMF'
      ? tanker.force.off
      : method === 'UFC'
        ? pressure * ship.sideArea * ufc.off
        : method === 'unit weight'
          ? byWeight
          : general.off;
  const moment = method === 'OCIMF' ? tanker.force.moment : number('wind.m_w') * off * ship.waterline;
  return {
    force: { along, off, moment },
    areas: ufc.areas,
    worked: {
      'wind.q': pressure,
      'wind.θ_r': heading.reduced,
      ...(heading.side !== 0 && { 'wind.s_w': heading.side }),
      ...general.worked,
      ...ufc.worked,
      ...tanker.worked,
      'wind.F_X': along,
      'wind.F_Y': off,
      'wind.M': moment,
    },
  };
}

/** Durst-type curve of the US Army shore protection manuals: an average over so many seconds to the hourly mean. */
function gustRatio(seconds: number): number {
  return 1.277 + 0.296 * Math.tanh(0.9 * Math.log10(45 / seconds));
}

/** Pressure × coefficient × area, with a power of the sine and cosine; a flow square or end-on has one part alone. */
function generalForm(
  { number }: Entries,
  ship: Ship,
  { sine, cosine, side }: Heading,
  pressure: number,
): { readonly along: number; readonly off: number; readonly worked: Worked } {
  const power = number('wind.n_w');
  const atEnd = cosine < 0 ? number('wind.C_bow') : number('wind.C_st');
  const along =
    pressure * atEnd * ship.frontArea * (cosine === 0 ? 0 : Math.sign(cosine) * Math.abs(cosine) ** power);
  const off = pressure * number('wind.C_wb') * ship.sideArea * (side === 0 ? 0 : side * sine ** power);
  return { along, off, worked: cosine === 0 ? {} : { 'wind.C_wh': atEnd } };
}

/** UFC 4-159-03 (2005), Eq. 2, 3, 5, 6 and 7: coefficient times shape function, along and off. */
function ufcForm(
  { number, text }: Entries,
  { sideArea }: Ship,
  { reduced, side }: Heading,
): { readonly along: number; readonly off: number; readonly areas: Verdict; readonly worked: Worked } {
  const [house, hull] = [number('wind.h_S'), number('wind.h_H')];
  const [houseArea, hullArea] = [notNegative(number('wind.A_S')), notNegative(number('wind.A_H'))];
  const atHouse = ((0.5 * (house + hull)) / 10) ** (2 / 7);
  const atHull = ((0.5 * hull) / 10) ** (2 / 7);
  const across =
    (number('wind.C_3') * (atHouse * houseArea + atHull * hullArea)) / positive(houseArea + hullArea);
  const shapeAcross = (sineOf(reduced) - 0.05 * sineOf(5 * reduced)) / 0.95;

  const zero = number('wind.θ_x');
  const auxiliary = reduced < zero ? (90 / zero) * reduced : (90 / (180 - zero)) * (reduced - zero) + 90;
  const isSingle = text('wind.deck') === 'single';
  const shapeAlong = isSingle
    ? sineOf(90 - auxiliary)
    : (sineOf(auxiliary + 90) - sineOf(5 * (auxiliary + 90)) / 10) / 0.9;
  const atEnd = reduced < zero ? number('wind.C_xS') : number('wind.C_xB');
  return {
    // Eq. 3 divides by the side area, which its parts make up; one part in a hundred is taken for rounding.
    areas: judge(Math.abs(houseArea + hullArea - sideArea), 0.01 * sideArea),
    along: atEnd * shapeAlong,
    off: side === 0 ? 0 * across : across * shapeAcross * side,
    worked: {
      'wind.a_S': atHouse,
      'wind.a_H': atHull,
      'wind.C_yw': across,
      // The constant is 0.92 with a scatter of 0.10 either way.
      'wind.C_yn': (across / number('wind.C_3')) * 0.82,
      'wind.f_y': shapeAcross,
      'wind.φ_x': auxiliary,
      'wind.f_x': shapeAlong,
      ...(reduced !== zero && { 'wind.C_xw': atEnd }),
    },
  };
}

function tankerForm(
  entries: Entries,
  ship: Ship,
  { reduced, side }: Heading,
  pressure: number,
): { readonly force: Force; readonly worked: Worked } {
  const coefficients = {
    along: readWindCurve(entries, 'CX', reduced),
    aft: readWindCurve(entries, 'CA', reduced),
    fore: readWindCurve(entries, 'CF', reduced),
  };
  const { force, aft, fore } = forceAtPerpendiculars({
    coefficients,
    pressure,
    side,
    endArea: ship.frontArea,
    sideArea: ship.sideArea,
    between: ship.between,
  });
  return {
    force,
    worked: {
      'wind.C_X': coefficients.along,
      'wind.C_A': coefficients.aft,
      'wind.C_F': coefficients.fore,
      'wind.q_o': pressure,
      'wind.F_A': aft,
      'wind.F_F': fore,
    },
  };
}

/** A coefficient of tankers in the loading chosen, at so many degrees from the stern. */
function readWindCurve(entries: Entries, name: 'CX' | 'CA' | 'CF', angle: number): number {
  const state = entries.text('wind.state') === 'loaded' ? 'l' : 'b';
  const points =
    tabulated(entries, 'wind.ocimf', 'a_w', `${name}_${state}`) ?? windCurves[`${name}_${state}`];
  return readCurve(points, angle);
}
