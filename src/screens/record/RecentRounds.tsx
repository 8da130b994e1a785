/** The newest rounds, lightly: what they were, and the way to be rid of one. What they tell is the review's to say. */
import { useEffect, useState } from 'preact/hooks';
import { RemoveButton } from '../../controls/RemoveButton.tsx';
import { followed, ownRecords } from '../../state/records.ts';
import { recordsOf } from '../../store/records.ts';
import { countWords, holesWritten, puttsCounted, roundName } from '../../text/record.ts';

const SHOWN = 10;

export const RecentRounds = () => {
  const [recent] = useState(() => followed((database) => recordsOf(database).recentRounds(SHOWN)));
  useEffect(() => recent.stop, [recent]);
  const rounds = recent.answer.value;
  return (
    <section class="card" data-testid="rounds">
      <h2>Rounds</h2>
      {rounds === undefined && <p class="quiet">Looking up your rounds…</p>}
      {rounds?.length === 0 && <p class="quiet">None yet.</p>}
      <ul class="rec-list">
        {rounds?.map(({ round, putts }) => (
          <li key={round.id}>
            <span>
              {roundName(round)}
              <span class="quiet">
                {countWords(puttsCounted(putts), 'putt')} on {countWords(holesWritten(round, putts), 'hole')}{' '}
                of {round.holes}
              </span>
            </span>
            <RemoveButton
              what={`the round of ${roundName(round)} and its putts`}
              onRemove={async () => (await ownRecords()).removeRound(round.id)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
};
