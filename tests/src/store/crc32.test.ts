/** CRC-32 against its published check value and Node's own. */
import { crc32 as nodeCrc } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { crc32, crc32Of } from '../../../src/store/crc32.ts';

it('gives the published check value of "123456789" (Koopman; Rocksoft model: CBF43926)', () => {
  expect(crc32Of('123456789')).toBe('cbf43926');
  expect(crc32Of('')).toBe('00000000');
});

it('agrees with zlib on any text, whole or in pieces', () => {
  // Node has it from 20.15 on; the engines field asks for 20.19.
  fc.assert(
    fc.property(fc.array(fc.string({ unit: 'grapheme' })), (pieces) => {
      const sum = crc32();
      for (const piece of pieces) sum.add(piece);
      const expected = nodeCrc(Buffer.from(pieces.join(''), 'utf8'))
        .toString(16)
        .padStart(8, '0');
      expect(sum.digits()).toBe(expected);
      expect(crc32Of(pieces.join(''))).toBe(expected);
    }),
    { seed: 41 },
  );
});
