/** How far to trust the numbers: beside them, not in a manual. */
export const ModelLimits = () => (
  <section class="card limits" aria-labelledby="limits-title">
    <h2 id="limits-title">How far to trust it</h2>
    <p>
      The arithmetic is good to 0.2 points of holed, 0.3 of three putts and about 0.005 expected putts; green
      speed, slope and your errors are estimates, and what they do is told under the answer.
    </p>
    <p>
      <strong>Left out:</strong> grain, wind, footprints, moisture, bumps, spin and the skid off the putter
      face. A ball either drops or rolls on; lip-outs that change its direction are not modelled.
    </p>
  </section>
);
