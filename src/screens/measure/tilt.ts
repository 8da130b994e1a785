/**
 * The tilt of the device in hand, where the browser offers its sensor and the person allows it.
 * Answers for: asking on request only, the reading averaged over the last second, whether the device lies still. Leaves out: what
 * is done with a reading. Source of the signs: W3C Device Orientation Event: beta is the turn about the device's x axis, positive
 * with its top edge raised.
 */
import { signal } from '@preact/signals';

export type TiltState = 'off' | 'asking' | 'refused' | 'missing' | 'waiting' | 'live';

export interface TiltReading {
  /** How far the top edge is above the bottom edge, degrees, mean of the last second. */
  readonly degrees: number;
  readonly still: boolean;
  /** Face up and nearly level, as on a board. */
  readonly flat: boolean;
}

/** Readings this old no longer count, ms. */
const WINDOW = 1000;
/** Readings that must have come in the window, and their widest spread (degrees), for the device to lie still; ours. */
const FEWEST = 5;
const STEADY = 0.3;
/** Beyond these the device is in a hand, not on a board, degrees. */
const FLAT = 25;
/** A device without the sensor never reports, ms. */
const PATIENCE = 3000;

/** What Safari adds to the standard. */
type AskingEvent = typeof DeviceOrientationEvent & { requestPermission?: () => Promise<string> };

export const createTilt = (host: Window & typeof globalThis) => {
  const state = signal<TiltState>('off');
  const reading = signal<TiltReading | undefined>(undefined);
  let recent: { at: number; beta: number; gamma: number }[] = [];
  let patience: ReturnType<typeof setTimeout> | undefined;

  const hear = (event: DeviceOrientationEvent): void => {
    const { beta, gamma } = event;
    // A desktop browser sends one event without figures.
    if (beta === null || gamma === null) return;
    clearTimeout(patience);
    state.value = 'live';
    const at = host.performance.now();
    recent = [...recent.filter((one) => at - one.at < WINDOW), { at, beta, gamma }];
    const betas = recent.map((one) => one.beta);
    const degrees = betas.reduce((sum, one) => sum + one, 0) / betas.length;
    reading.value = {
      degrees,
      still: recent.length >= FEWEST && Math.max(...betas) - Math.min(...betas) <= STEADY,
      flat: Math.abs(degrees) < FLAT && Math.abs(gamma) < FLAT,
    };
  };

  const stop = (): void => {
    clearTimeout(patience);
    host.removeEventListener('deviceorientation', hear);
    recent = [];
    reading.value = undefined;
    state.value = 'off';
  };

  /** To be called from a press: browsers ask for leave only then. */
  const start = async (): Promise<void> => {
    const kind = host.DeviceOrientationEvent as AskingEvent | undefined;
    if (kind === undefined) {
      state.value = 'missing';
      return;
    }
    if (kind.requestPermission) {
      state.value = 'asking';
      const answer = await kind.requestPermission().catch(() => 'denied');
      // Left meanwhile.
      if (state.peek() !== 'asking') return;
      if (answer !== 'granted') {
        state.value = 'refused';
        return;
      }
    }
    state.value = 'waiting';
    host.addEventListener('deviceorientation', hear);
    patience = setTimeout(() => {
      host.removeEventListener('deviceorientation', hear);
      state.value = 'missing';
    }, PATIENCE);
  };

  return { state, reading, start, stop };
};
export type Tilt = ReturnType<typeof createTilt>;
