const two = (n: number): string => String(n).padStart(2, '0');

/** Hours and minutes of a time in milliseconds, where the person is. */
export function clockTime(at: number): string {
  const date = new Date(at);
  return `${two(date.getHours())}:${two(date.getMinutes())}`;
}

/** Day of a time in milliseconds, where the person is. */
export function day(at: number): string {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Day and time of a time in milliseconds, where the person is. */
export function dayAndTime(at: number): string {
  return `${day(at)} ${clockTime(at)}`;
}

/** Day and time to the second, where what happened within a minute is to be told apart. */
export function dayAndSecond(at: number): string {
  return `${dayAndTime(at)}:${two(new Date(at).getSeconds())}`;
}
