/**
 * The tilt of the device in hand, where the browser offers its sensor and the person allows it.
 * Answers for: asking on request only, the reading averaged over the last second, whether the device lies still. Leaves out: what
 * is done with a reading. Source of the signs: W3C Device Orientation Event: beta is the turn about the device's x axis, positive
 * with its top edge raised. Browsers may send an event only when an angle has changed by a tenth of a degree: a device that lies
 * still falls silent. So the last angle heard is looked at ten times a second, whether or not anything is heard.
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

/** Between two looks, ms, and how many make a reading: a second. */
const LOOK = 100;
const LOOKS = 10;
/** Widest spread of that second with which the device lies still, degrees; ours. */
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
  let latest: { beta: number; gamma: number } | undefined;
  let recent: number[] = [];
  let patience: ReturnType<typeof setTimeout> | undefined;
  let looking: ReturnType<typeof setInterval> | undefined;

  const hear = (event: DeviceOrientationEvent): void => {
    const { beta, gamma } = event;
    // A desktop browser sends one event without figures.
    if (beta === null || gamma === null) return;
    clearTimeout(patience);
    state.value = 'live';
    latest = { beta, gamma };
  };

  const look = (): void => {
    if (latest === undefined) return;
    recent = [...recent.slice(1 - LOOKS), latest.beta];
    const degrees = recent.reduce((sum, one) => sum + one, 0) / recent.length;
    reading.value = {
      degrees,
      still: recent.length === LOOKS && Math.max(...recent) - Math.min(...recent) <= STEADY,
      flat: Math.abs(degrees) < FLAT && Math.abs(latest.gamma) < FLAT,
    };
  };

  const hush = (): void => {
    clearTimeout(patience);
    clearInterval(looking);
    host.removeEventListener('deviceorientation', hear);
  };

  const stop = (): void => {
    hush();
    latest = undefined;
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
    looking = setInterval(look, LOOK);
    patience = setTimeout(() => {
      hush();
      state.value = 'missing';
    }, PATIENCE);
  };

  return { state, reading, start, stop };
};
