import { isNear } from './near.ts';

/** Where and when a press began. */
export type PressPoint = Pick<PointerEvent, 'clientX' | 'clientY' | 'timeStamp'>;

/** Within so many milliseconds a second press may be part of a double click: what systems take unless they are told otherwise. */
const DOUBLE_CLICK = 500;

/** Whether a press may be the second one of a double click that began with another. */
export function isSecondPress(press: PressPoint, first: PressPoint): boolean {
  return isNear(press, first) && press.timeStamp - first.timeStamp < DOUBLE_CLICK;
}
