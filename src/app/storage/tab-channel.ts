/** What tabs of one browser tell each other. */
export type TabMessage = { readonly kind: 'removed'; readonly id: string } | { readonly kind: 'list' };

/** Tells the other tabs; `hear` hears what they tell. Where the browser has no channel nobody is told at once. */
export function openTabChannel(hear: (message: TabMessage) => void): (message: TabMessage) => void {
  if (typeof BroadcastChannel === 'undefined') return () => undefined;
  const channel = new BroadcastChannel('quaybook');
  channel.addEventListener('message', ({ data }: MessageEvent<TabMessage>) => hear(data));
  return (message) => channel.postMessage(message);
}
