/** SHA-1 of bytes, 20 bytes (FIPS 180-4 section 6.1.2). For names only, never for secrets. */
export function sha1(message: Uint8Array): Uint8Array {
  const state = new Uint32Array([0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476, 0xc3d2e1f0]);
  const padded = pad(message);
  const words = new Uint32Array(80);
  for (let offset = 0; offset < padded.byteLength; offset += 64) {
    for (let t = 0; t < 16; t++) words[t] = padded.getUint32(offset + 4 * t);
    for (let t = 16; t < 80; t++) {
      words[t] = rotateLeft(
        at(words, t - 3) ^ at(words, t - 8) ^ at(words, t - 14) ^ at(words, t - 16),
        1,
      );
    }
    mixBlock(state, words);
  }
  const digest = new DataView(new ArrayBuffer(20));
  state.forEach((word, i) => {
    digest.setUint32(4 * i, word);
  });
  return new Uint8Array(digest.buffer);
}

function mixBlock(state: Uint32Array, words: Uint32Array): void {
  let [a, b, c, d, e] = state as unknown as [number, number, number, number, number];
  for (let t = 0; t < 80; t++) {
    const next = (rotateLeft(a, 5) + choose(t, b, c, d) + e + at(words, t)) | 0;
    [e, d, c, b, a] = [d, c, rotateLeft(b, 30), a, next];
  }
  [a, b, c, d, e].forEach((word, i) => {
    state[i] = at(state, i) + word;
  });
}

/** f(t) + K(t) of FIPS 180-4 sections 4.1.1 and 4.2.1. */
function choose(t: number, b: number, c: number, d: number): number {
  if (t < 20) return ((b & c) ^ (~b & d)) + 0x5a827999;
  if (t < 40) return (b ^ c ^ d) + 0x6ed9eba1;
  if (t < 60) return ((b & c) ^ (b & d) ^ (c & d)) + 0x8f1bbcdc;
  return (b ^ c ^ d) + 0xca62c1d6;
}

function pad(message: Uint8Array): DataView {
  const blocks = Math.ceil((message.length + 9) / 64);
  const padded = new Uint8Array(64 * blocks);
  padded.set(message);
  padded[message.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 4, message.length * 8);
  return view;
}

function rotateLeft(word: number, bits: number): number {
  return (word << bits) | (word >>> (32 - bits));
}

function at(words: Uint32Array, i: number): number {
  return words[i] ?? 0;
}
