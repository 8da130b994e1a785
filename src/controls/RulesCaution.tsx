/** What the Rules of Golf allow: shown on every screen, beside the numbers. */
export const RulesCaution = () => (
  <p class="caution" role="note">
    <strong>For practice and review.</strong> During a round under the Rules of Golf you may record putts for
    later, but not ask for a line, a speed or a slope (Rule 4.3a). Check your competition’s Local Rules.
  </p>
);
