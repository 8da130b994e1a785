/**
 * How large a long test runs: small enough for every day, or at full size (`npm run test:full`). The one place that reads
 * the choice. Either size proves the same sentence, the full one with more of the same cases.
 */

/** Set by tests/support/check.mjs. */
const FULL = process.env.BORROW_TEST_SIZE === 'full';

/**
 * @param daily what every run takes
 * @param full what the full run takes
 */
export const sized = <Size>(daily: Size, full: Size): Size => (FULL ? full : daily);
