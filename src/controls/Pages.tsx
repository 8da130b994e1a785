/** Long lists a page at a time. Answers for: which part is shown, and turning to the next. Leaves out: the rows. */
import { useState } from 'preact/hooks';

export interface Page {
  /** First row shown and the one after the last. */
  readonly from: number;
  readonly to: number;
}

export interface PagesProps {
  /** Words before the numbers: "Rounds". */
  readonly what: string;
  readonly page: Page;
  readonly count: number;
  readonly onTurn: (page: number) => void;
  readonly number: number;
}

/** A page and how to turn it. */
export interface PageInHand extends Page {
  readonly number: number;
  readonly turn: (page: number) => void;
}

/** The page in hand of a list; one that has become shorter turns back by itself. */
export const usePage = (count: number, perPage: number): PageInHand => {
  const [asked, turn] = useState(0);
  const number = Math.min(asked, Math.max(0, Math.ceil(count / perPage) - 1));
  return { from: number * perPage, to: Math.min(count, (number + 1) * perPage), number, turn };
};

/** Nothing when there is one page only. */
export const Pages = ({ what, page: { from, to }, count, onTurn, number }: PagesProps) =>
  from === 0 && to === count ? null : (
    <p class="pages">
      <span role="status">
        {what} {from + 1} to {to} of {count.toLocaleString('en-US')}
      </span>
      <button type="button" class="plain" disabled={from === 0} onClick={() => onTurn(number - 1)}>
        Before
      </button>
      <button type="button" class="plain" disabled={to === count} onClick={() => onTurn(number + 1)}>
        Next
      </button>
    </p>
  );
