/** The engine's only door: everything the app, the command line and tests of behaviour may use. */
export * from './types.ts';
export * from './constants.ts';
export * from './units.ts';
