/** Signs of full width, as some keyboards write them, as the ordinary ones. */
export function ordinarySigns(text: string): string {
  return /[\uff01-\uff5e]/.test(text)
    ? text.replace(/[\uff01-\uff5e]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - 0xfee0))
    : text;
}
