/** The first 32 bits of the fractional parts of the square roots of the first 8 primes (FIPS 180-4, 5.3.3). */
const INITIAL = primeRoots(8, 2);

/** The first 32 bits of the fractional parts of the cube roots of the first 64 primes (FIPS 180-4, 4.2.2). */
const ROUND = primeRoots(64, 3);

/** The SHA-256 digest (FIPS 180-4) of some bytes, as 64 lower-case hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  const state = INITIAL.slice();
  const schedule = new Int32Array(64);
  const whole = bytes.length - (bytes.length % 64);
  for (let at = 0; at < whole; at += 64) compress(state, schedule, bytes, at);
  const tail = padded(bytes.subarray(whole), bytes.length);
  for (let at = 0; at < tail.length; at += 64) compress(state, schedule, tail, at);
  return Array.from(state, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

/** The last bytes, the bit 1, zeros, and the length of the message in bits as 64 bits (FIPS 180-4, 5.1.1). */
function padded(last: Uint8Array, length: number): Uint8Array {
  const tail = new Uint8Array(last.length < 56 ? 64 : 128);
  tail.set(last);
  tail[last.length] = 0x80;
  const view = new DataView(tail.buffer);
  view.setUint32(tail.length - 8, Math.floor(length / 0x20000000));
  view.setUint32(tail.length - 4, length * 8);
  return tail;
}

/** One block of 64 bytes into the state (FIPS 180-4, 6.2.2). */
function compress(state: Int32Array, w: Int32Array, bytes: Uint8Array, at: number): void {
  for (let t = 0; t < 16; t++) {
    const i = at + t * 4;
    w[t] = (bytes[i]! << 24) | (bytes[i + 1]! << 16) | (bytes[i + 2]! << 8) | bytes[i + 3]!;
  }
  for (let t = 16; t < 64; t++) {
    const x = w[t - 15]!;
    const y = w[t - 2]!;
    const s0 = turned(x, 7) ^ turned(x, 18) ^ (x >>> 3);
    const s1 = turned(y, 17) ^ turned(y, 19) ^ (y >>> 10);
    w[t] = (w[t - 16]! + s0 + w[t - 7]! + s1) | 0;
  }
  let a = state[0]!;
  let b = state[1]!;
  let c = state[2]!;
  let d = state[3]!;
  let e = state[4]!;
  let f = state[5]!;
  let g = state[6]!;
  let h = state[7]!;
  for (let t = 0; t < 64; t++) {
    const s1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUND[t]! + w[t]!) | 0;
    const s0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    h = g;
    g = f;
    f = e;
    e = (d + t1) | 0;
    d = c;
    c = b;
    b = a;
    a = (t1 + t2) | 0;
  }
  state[0]! += a;
  state[1]! += b;
  state[2]! += c;
  state[3]! += d;
  state[4]! += e;
  state[5]! += f;
  state[6]! += g;
  state[7]! += h;
}

/** A 32-bit word turned right by `by` bits. */
function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by));
}

/**
 * The first 32 bits of the fractional part of the `root`-th root of each of the first `count` primes, found with
 * whole numbers: floor(root of p · 2^(32·root)) has them as its last 32 bits.
 */
function primeRoots(count: number, root: number): Int32Array {
  const words = new Int32Array(count);
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) {
    if (primes.some((p) => n % p === 0)) continue;
    words[primes.length] = Number(BigInt.asIntN(32, wholeRoot(BigInt(n) << BigInt(32 * root), BigInt(root))));
    primes.push(n);
  }
  return words;
}

/** The largest whole number whose `root`-th power is at most `x`, by halving. */
function wholeRoot(x: bigint, root: bigint): bigint {
  let low = 0n;
  let high = 1n << 40n;
  while (high - low > 1n) {
    const middle = (low + high) >> 1n;
    if (middle ** root <= x) low = middle;
    else high = middle;
  }
  return low;
}
