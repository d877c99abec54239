/** Keys of the whole app, also while something is being typed: what is in hand is entered first. */
const appKeys: ReadonlySet<string> = new Set(['F1', 'F6', 'F8']);
const appControlKeys: ReadonlySet<string> = new Set(['f', 'g', 'p', 's', 'pageup', 'pagedown']);

/** Whether a key leads out of what is being typed, to the app or to the browser. */
export function leadsOut({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  if (altKey) return false;
  return ctrlKey || metaKey ? appControlKeys.has(key.toLowerCase()) : appKeys.has(key);
}

/** Keeps a key that belongs to a field from the page around it. */
export function shieldKey(event: KeyboardEvent): void {
  if (!leadsOut(event)) event.stopPropagation();
}
