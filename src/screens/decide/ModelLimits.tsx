/** How far to trust the numbers: beside them, not in a manual. Figures of precision are those the tests hold the engine to. */
export const ModelLimits = () => (
  <section class="card limits" aria-labelledby="limits-title">
    <h2 id="limits-title">How far to trust it</h2>
    <p>
      Against a plain count of random rolls of the same model, holed is within 0.2 points and three putts
      within 0.3 points. The model is the larger doubt: green speed, slope and your errors are estimates.
    </p>
    <p>
      <strong>Left out:</strong> grain, wind, footprints, moisture, bumps and spin; the skid off the putter
      face, unless you count it. How much the rim gives and grips when a ball lips out is a guess: it moves
      what drops dead centre by up to a third in speed, near the edge hardly at all.
    </p>
  </section>
);
