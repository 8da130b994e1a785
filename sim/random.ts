/**
 * Repeatable random numbers: the same seed gives the same sequence on every machine.
 *
 * Answers for: uniform numbers in [0, 1). Leaves out: other distributions, security. Only 32-bit integer arithmetic, so
 * no rounding can differ between machines. Sources: sfc32 (Chris Doty-Humphrey, PractRand, public domain) for the
 * sequence; FNV-1a (Fowler, Noll, Vo) to turn a seed into a number; the finisher of MurmurHash3 (Appleby) to spread it.
 */

const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;
/** 2^32 divided by the golden ratio: a step that never repeats within 2^32 draws (Weyl sequence). */
const WEYL_STEP = 0x9e3779b9;
/** Draws thrown away so that similar seeds part company; sfc32's author asks for 12 or more. */
const WARM_UP = 16;

/** FNV-1a hash of a text's UTF-16 code units, an unsigned 32-bit integer. */
function hashText(text: string): number {
  let hash = FNV_OFFSET;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    hash = Math.imul(hash ^ (code & 0xff), FNV_PRIME);
    hash = Math.imul(hash ^ (code >>> 8), FNV_PRIME);
  }
  return hash >>> 0;
}

function spread(word: number): number {
  let mixed = word;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
  mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
  return mixed ^ (mixed >>> 16);
}

/**
 * A source of repeatable random numbers.
 * @param seed a number or text; 7 and '7' are the same seed, so that it survives a trip through an address or a file
 * @returns a function; each call gives the next number, 0 <= number < 1, in steps of 2^-32
 */
export function seededRandom(seed: number | string): () => number {
  const hash = hashText(String(seed));
  let a = spread(hash);
  let b = spread(hash + WEYL_STEP);
  let c = spread(hash + 2 * WEYL_STEP);
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < WARM_UP; i++) next();
  return next;
}
