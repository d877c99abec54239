import { type Maybe, withAll } from './inputs.ts';

/** Metres in millimetres. */
export function mm(metres: Maybe): Maybe {
  return withAll([metres], (one) => 1000 * one);
}

/** Square metres in square millimetres. */
export function mm2(area: Maybe): Maybe {
  return withAll([area], (one) => 1e6 * one);
}

/** Kilopascals in megapascals. */
export function mpa(pressure: Maybe): Maybe {
  return withAll([pressure], (one) => one / 1000);
}
