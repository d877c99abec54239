import type { CompactionReply } from './compaction-worker.ts';

/**
 * Compacts a book's journal beside the page, one time after the other. `done` hears the last edit that is in the snapshot;
 * `failed` hears why there is none, and the journal stays.
 */
export function createCompaction(
  id: string,
  done: (through: number) => void,
  failed: (reason: string) => void,
): () => void {
  let worker: Worker | undefined;
  return () => {
    if (worker) return;
    worker = new Worker(new URL('./compaction-worker.ts', import.meta.url), { type: 'module' });
    const end = (): void => {
      worker?.terminate();
      worker = undefined;
    };
    worker.addEventListener('message', ({ data }: MessageEvent<CompactionReply>) => {
      end();
      if ('through' in data) done(data.through);
      else failed(data.failed);
    });
    worker.addEventListener('error', ({ message }) => {
      end();
      failed(message || 'its program could not be loaded');
    });
    worker.postMessage(id);
  };
}
