/** Doors where units convert. Inside the engine: metres, seconds, radians, shares. */

const METRES_PER_FOOT = 0.3048;
const METRES_PER_INCH = 0.0254;

export const feetToMetres = (feet: number): number => feet * METRES_PER_FOOT;
export const metresToFeet = (metres: number): number => metres / METRES_PER_FOOT;
export const inchesToMetres = (inches: number): number => inches * METRES_PER_INCH;
export const metresToInches = (metres: number): number => metres / METRES_PER_INCH;
export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180;
export const radiansToDegrees = (radians: number): number => (radians * 180) / Math.PI;

/**
 * Clock position of the ball round the hole to its bearing from the hole: 12 is straight uphill of the hole, 6 below it.
 * @param clock hours, 0 <= clock < 12 (3.5 = 3:30)
 * @param downhill direction a ball would run off, radians from +x
 * @returns bearing hole -> ball, radians from +x
 */
export const clockToBearing = (clock: number, downhill: number): number =>
  downhill + Math.PI - (clock / 12) * 2 * Math.PI;

/** Inverse of `clockToBearing`; hours in [0, 12). */
export const bearingToClock = (bearing: number, downhill: number): number => {
  const hours = (((downhill + Math.PI - bearing) / (2 * Math.PI)) * 12) % 12;
  return hours < 0 ? hours + 12 : hours;
};
