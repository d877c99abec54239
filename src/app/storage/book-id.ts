/** An id no other book has: 128 random bits. `crypto.randomUUID` is not there on plain http. */
export function newBookId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
