/**
 * Queries of the records, followed: what they answer now and after every change in any tab. Leaves out: what is asked, what is made of it.
 * The database is opened before Dexie watches a query: what a query awaits besides its tables can make Dexie lose sight of them, and then no
 * change is told. For the same reason what is fetched is worked on afterwards.
 */
import { liveQuery, type Subscription } from 'dexie';

export interface FollowOptions<Answer> {
  /** Opens what is needed, and gives the query. */
  readonly open: () => Promise<() => Promise<Answer>>;
  readonly next: (answer: Answer) => void;
  /** It could not be opened or read. Default: what was known stays in force. */
  readonly failed?: () => void;
}

/** Follows a query; returns the function that stops it. */
export const follow = <Answer>({
  open,
  next,
  failed = () => undefined,
}: FollowOptions<Answer>): (() => void) => {
  let subscription: Subscription | undefined;
  let over = false;
  const start = async (): Promise<void> => {
    const query = await open();
    if (!over) subscription = liveQuery(query).subscribe({ next, error: failed });
  };
  start().catch(failed);
  return () => {
    over = true;
    subscription?.unsubscribe();
  };
};
