/** The engine's only door: everything the app, the command line and tests of behaviour may use. */
export * from './constants.ts';
export { seededRandom } from './random.ts';
export { readPutt } from './read/line.ts';
export { rollBall } from './roll/roll.ts';
export { type FieldOptions, fieldSurface } from './surface/field.ts';
export { type GreenOptions, generateGreen } from './surface/generated.ts';
export { pinSpots } from './surface/pins.ts';
export { planeSurface } from './surface/plane.ts';
export { sampleSurface, surfaceBounds } from './surface/sample.ts';
export * from './types.ts';
export * from './units.ts';
