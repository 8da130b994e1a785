/** Where plans of weeks were kept before they were records: a key that many ask for before anyone needs to read what is there. */
export const OLD_PLANS = 'borrow.week.1';
