/** So many px a hand that rests may move the pointer. */
const REST = 4;

type Point = Pick<MouseEvent, 'clientX' | 'clientY'>;

/** Whether two points are so close that a hand that rests may have met both. */
export function isNear(a: Point, b: Point): boolean {
  return Math.abs(a.clientX - b.clientX) <= REST && Math.abs(a.clientY - b.clientY) <= REST;
}
