/** Why the storage of this browser would not keep something, as the end of a sentence. */
export function reasonOf(error: unknown): string {
  if (error instanceof DOMException && error.name === 'QuotaExceededError')
    return 'the storage of this browser is full';
  if (error instanceof DOMException && (error.name === 'SecurityError' || error.name === 'InvalidStateError'))
    return 'this browser does not allow it';
  return error instanceof Error ? error.message : String(error);
}
