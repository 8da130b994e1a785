/**
 * The house, floor by floor from the ground up: a folder may import from floors below its own, never from its own floor or above. Written
 * here once: tests/floors.test.ts holds the code to it, and DEVELOPERS.md shows it as the picture of the house.
 */

export interface Floor {
  readonly rooms: readonly string[];
  /** What is done there. */
  readonly does: string;
}

export const FLOORS: readonly Floor[] = [
  { rooms: ['sim/*.ts'], does: 'types, units, constants, seeded random numbers' },
  {
    rooms: ['sim/maths', 'sim/surface', 'sim/hole', 'sim/record'],
    does: 'roots, matrices, distributions; the ground; what drops; what is recorded',
  },
  {
    rooms: ['sim/statistics', 'sim/roll', 'sim/player'],
    does: 'intervals; how a ball rolls; who putts, and who else it may be',
  },
  { rooms: ['sim/read'], does: 'the line for a pace, on the ground as it is and as it is seen' },
  { rooms: ['sim/odds'], does: 'what drops, what is left, putts still needed; maps of a green' },
  { rooms: ['sim/benchmarks'], does: 'the model beside published records' },
  {
    rooms: ['sim/evidence', 'sim/evidence/fit'],
    does: 'what a record says, and what is luck; the errors of its player',
  },
  { rooms: ['sim/measuring'], does: 'green speed, slope, pace, start line from what was measured' },
  { rooms: ['sim/costs'], does: 'what each error costs; firmer or not' },
  { rooms: ['sim/training'], does: 'read drills, putting drills, the week' },
  { rooms: ['sim/index.ts'], does: 'the door to the engine: nobody above goes past it' },
  { rooms: ['drills', 'src/scene'], does: 'drills as data; the map, the only place with pixi.js' },
  {
    rooms: ['src/store', 'src/worker'],
    does: 'records in IndexedDB, backups, CSV; the engine off the page’s thread',
  },
  { rooms: ['src/text'], does: 'numbers with units, parsing, phrases used twice' },
  {
    rooms: ['src/cli', 'src/state'],
    does: 'the command line; what several screens share, and what is kept on the device',
  },
  { rooms: ['src/controls'], does: 'fields, sliders, panels, styles used by several screens' },
  { rooms: ['src/charts'], does: 'data to marks' },
  { rooms: ['src/screens/*'], does: 'one folder a screen, with its words; none imports another’s' },
  { rooms: ['src/app'], does: 'shell, places, Rules mode' },
  { rooms: ['src/main.tsx'], does: 'what builds and connects' },
];

/** As DEVELOPERS.md shows it: the roof first. */
export const pictureOf = (floors: readonly Floor[]): string => {
  const names = floors.map(({ rooms }) => rooms.join(', '));
  const width = Math.max(...names.map((name) => name.length));
  return floors
    .map(({ does }, i) => `    ${names[i].padEnd(width)}  ${does}`)
    .reverse()
    .join('\n');
};
