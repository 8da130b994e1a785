/** What the record cannot tell apart, and the tap of the form that would have told. */
import { ERRORS } from '../../../sim/index.ts';
import { GATES_WORDS, NO_PAIRS, narrowedCell, pairWords, TAP_WORDS, tapWords } from '../../text/errors.ts';
import { capital, formatCount } from '../../text/phrases.ts';
import { ERROR_NAMES } from '../../text/player.ts';
import { view } from './view.ts';
import { behind, isFirstLook } from './work.ts';

export const Apart = () => {
  const found = view.value;
  // A first look has not weighed the taps.
  if (found === undefined || isFirstLook.value) return null;
  const { taps, pairs } = found.answer.tellApart;
  const gatesWouldPart =
    found.answer.measuredStrokes === 0 && pairs.some(({ errors }) => errors.includes('lineSd'));
  return (
    <section class={behind.value ? 'card stale' : 'card'} aria-labelledby="apart-title">
      <h2 id="apart-title">What these records cannot tell apart</h2>
      {pairs.length === 0 ? (
        <p data-testid="pairs">{NO_PAIRS}</p>
      ) : (
        <ul class="errors-list" data-testid="pairs">
          {pairs.map((pair) => (
            <li key={pair.errors.join()}>{pairWords(pair)}</li>
          ))}
        </ul>
      )}
      {gatesWouldPart && (
        <p data-testid="gates">
          {GATES_WORDS} <a href="#/measure/startLine">Measure your start line</a>
        </p>
      )}
      {taps.length > 0 && (
        <>
          <p data-testid="best-tap">{tapWords(found.tap)}</p>
          <details>
            <summary>Every tap left out, and by how much it would have narrowed each range</summary>
            {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than a phone must scroll by keys too */}
            <section class="scroll" tabIndex={0} aria-label="Taps and what they would have told">
              <table class="errors-table">
                <thead>
                  <tr>
                    <th scope="col">tap</th>
                    <th scope="col">putts</th>
                    {ERRORS.map((name) => (
                      <th key={name} scope="col">
                        {ERROR_NAMES[name]}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {taps.map(({ tap, putts, spread }) => (
                    <tr key={tap}>
                      <th scope="row">{capital(TAP_WORDS[tap])}</th>
                      <td>{formatCount(putts)}</td>
                      {ERRORS.map((name) => (
                        <td key={name}>{narrowedCell(spread[name])}</td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </section>
          </details>
          <p class="hint">
            Rough: worked out to first order, on a sample of these putts. Good for a first choice of tap, not
            a promise.
          </p>
        </>
      )}
    </section>
  );
};
