// An answer with numbers behind a head in JSON.

interface Numbers<T> {
  readonly BYTES_PER_ELEMENT: number;
  new (body: ArrayBuffer, at: number, n: number): T;
}

export interface Unpacked<Head> {
  head: Head;
  /** The next so many samples. */
  take: (n: number) => Float32Array<ArrayBuffer>;
  /** The next so many numbers of a kind; those behind them begin at a multiple of four bytes. */
  numbers: <T>(kind: Numbers<T>, n: number) => T;
}

/** Takes an answer apart: 4 bytes that say how long the head is, the head, and numbers. */
export function unpacked<Head>(body: ArrayBuffer): Unpacked<Head> {
  const long = new DataView(body).getUint32(0, true);
  const head = JSON.parse(new TextDecoder().decode(new Uint8Array(body, 4, long))) as Head;
  let at = 4 + long;
  const numbers = <T>(kind: Numbers<T>, n: number): T => {
    const some = new kind(body, at, n);
    at += 4 * Math.ceil((n * kind.BYTES_PER_ELEMENT) / 4);
    return some;
  };
  return { head, numbers, take: (n) => numbers<Float32Array<ArrayBuffer>>(Float32Array, n) };
}
