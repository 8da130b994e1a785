/** What the figures mean and how far to trust them, beside them. Figures of precision are those measured (sim/MODEL.md). */
export const GreenDetails = () => (
  <section class="card limits" aria-labelledby="green-limits-title">
    <h2 id="green-limits-title">How far to trust it</h2>
    <p>
      Of places on a finished map 19 in 20 are within 0.01 putts of playing that very place, the others within
      0.03. The model is the larger doubt: green speed, slope and your errors are estimates, and a foot of
      green speed either way is tried above.
    </p>
    <p>
      That uphill putts are the easier ones is what most records of real players say. By how much turns on how
      far you misread slope: whoever saw every slope as it is would find downhill putts easier.
    </p>
    <details>
      <summary>What the figures mean</summary>
      <dl class="terms">
        <dt>Expected putts</dt>
        <dd>
          How many it takes from there on average, until the ball is holed, with your own errors of line, pace
          and read.
        </dd>
        <dt>The first putt</dt>
        <dd>
          It is aimed along the line as you see it, at the pace that needs fewest putts from that very place.
          What follows is putted at its best pace too.
        </dd>
        <dt>One, three +</dt>
        <dd>Share of putts from there that drop at once, and share that takes three or more.</dd>
        <dt>The side</dt>
        <dd>
          Every half hour round the hole is compared at one distance. How likely your approach is to end on a
          side is not counted, nor what lies beside the green.
        </dd>
        <dt>The map</dt>
        <dd>
          Places two metres apart are played first, then one metre, then closer where that still changes
          anything; between them the map is filled in.
        </dd>
        <dt>Left out</dt>
        <dd>
          Grain, wind, footprints, moisture, bumps and spin; that you may read or strike uphill putts better
          than downhill ones, or the other way round.
        </dd>
      </dl>
    </details>
  </section>
);
