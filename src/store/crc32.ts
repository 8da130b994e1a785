/**
 * CRC-32 of text as UTF-8 (ISO 3309, the polynomial 0x04C11DB7 reflected; as in RFC 1952, section 8): tells a damaged file from a
 * whole one. Not against intent. Leaves out: what is summed.
 */

const TABLE = Uint32Array.from({ length: 256 }, (_unused, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

export interface Crc32 {
  add(text: string): void;
  /** Eight hexadecimal digits, of everything added so far. */
  digits(): string;
}

export const crc32 = (): Crc32 => {
  const encoder = new TextEncoder();
  let state = 0xffffffff;
  return {
    add(text) {
      for (const byte of encoder.encode(text)) state = TABLE[(state ^ byte) & 0xff] ^ (state >>> 8);
    },
    digits: () => ((state ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0'),
  };
};

export const crc32Of = (text: string): string => {
  const sum = crc32();
  sum.add(text);
  return sum.digits();
};
