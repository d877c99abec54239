/** The lock of an open book: only the tab that holds it writes the book. */
export interface BookLock {
  /** Whether this tab holds it by now; where the browser has no locks, every tab does. */
  readonly held: boolean;
  /** Resolves when the tab that had it has let go, and this one holds it. Never, if this one held it from the start. */
  readonly comes: Promise<void>;
  /** Lets go of it, or stops waiting; resolves when another may have it. */
  readonly release: () => Promise<void>;
}

const nameOf = (id: string): string => `quaybook:${id}`;

/** Asks for the lock of a book; resolves as soon as it is known whether it is to be had. */
export async function requestBookLock(id: string): Promise<BookLock> {
  const never = new Promise<void>(() => undefined);
  // Not there on plain http. Tabs then find each other's edits in the journal.
  if (!navigator.locks) return { held: true, comes: never, release: () => Promise.resolve() };
  const leaving = openPromise<void>();
  const first = openPromise<boolean>();
  const over = navigator.locks.request(nameOf(id), { ifAvailable: true }, (lock) => {
    first.resolve(lock !== null);
    return lock ? leaving.promise : undefined;
  });
  if (await first.promise) {
    const release = async (): Promise<void> => {
      leaving.resolve();
      await over;
    };
    return { held: true, comes: never, release };
  }
  const waiting = new AbortController();
  let held = false;
  const arrived = openPromise<void>();
  const later = navigator.locks
    .request(nameOf(id), { signal: waiting.signal }, () => {
      held = true;
      arrived.resolve();
      return leaving.promise;
    })
    .catch((error: unknown) => {
      if (!waiting.signal.aborted) throw error;
    });
  const release = async (): Promise<void> => {
    waiting.abort();
    leaving.resolve();
    await later;
  };
  return {
    get held() {
      return held;
    },
    comes: arrived.promise,
    release,
  };
}

/** Whether some tab has a book open; undefined where the browser cannot tell. */
export async function isBookLocked(id: string): Promise<boolean | undefined> {
  if (!navigator.locks) return undefined;
  const { held } = await navigator.locks.query();
  return held?.some(({ name }) => name === nameOf(id)) ?? false;
}

/** A promise that is resolved from outside. */
function openPromise<T>(): { readonly promise: Promise<T>; readonly resolve: (value: T) => void } {
  let resolve: (value: T) => void = () => undefined;
  const promise = new Promise<T>((settle) => {
    resolve = settle;
  });
  return { promise, resolve };
}
