/** Lines of the map as samples beside words. */
import type { ComponentChildren } from 'preact';

const Sample = ({ kind }: { kind: 'yours' | 'true' | 'die' | 'firm' }) => (
  <svg width="38" height="10" aria-hidden="true">
    <path class={`read-key-${kind}`} d="M2 5h34" />
  </svg>
);

export const PaceKey = ({ pace }: { pace: 'die' | 'firm' }) => <Sample kind={pace} />;

export const MapKey = ({
  kind,
  children,
}: {
  kind: 'yours' | 'true' | 'die' | 'firm';
  children: ComponentChildren;
}) => (
  <span class="read-key">
    <Sample kind={kind} /> {children}
  </span>
);
