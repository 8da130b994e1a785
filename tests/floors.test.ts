/** Who may import whom: the picture of the house (tests/support/floors.ts) against every import there is. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { FLOORS, pictureOf } from './support/floors.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

const FILES = ['sim', 'src', 'drills'].flatMap((top) =>
  readdirSync(join(ROOT, top), { recursive: true, encoding: 'utf8' })
    .map((name) => `${top}/${name}`)
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts')),
);

/** Files of ours that a text imports, whole or in part, at once or later. */
const importsIn = (name: string, text: string): string[] =>
  [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.{1,2}\/[^']+\.tsx?)'/g)].map(([, path]) =>
    normalize(join(dirname(name), path)),
  );
const IMPORTS = new Map(FILES.map((name) => [name, importsIn(name, readFileSync(join(ROOT, name), 'utf8'))]));

/** The room a file is in: the longest that fits. One screen is a room, all screens one floor. */
function roomOf(name: string): { floor: number; room: string } {
  let best = { floor: -1, room: '', length: -1 };
  FLOORS.forEach(({ rooms }, floor) => {
    for (const room of rooms) {
      const pattern = new RegExp(`^(${room.replaceAll('.', '\\.').replaceAll('*', '[^/]+')})(/|$)`);
      const [, found] = pattern.exec(name) ?? [];
      // Of two as long, the one without a star: sim/index.ts is not one of sim/*.ts.
      const length = found === undefined ? -1 : found.length + (room.includes('*') ? 0 : 0.5);
      if (found !== undefined && length > best.length) best = { floor, room: found, length };
    }
  });
  return best;
}

const isAllowed = (from: string, to: string): boolean => {
  const [one, other] = [roomOf(from), roomOf(to)];
  if (one.floor < 0 || other.floor < 0) return false;
  if (one.room === other.room) return true;
  // The ground floor is files, not folders.
  if (one.floor === 0 && other.floor === 0) return true;
  return other.floor < one.floor;
};

describe('the house', () => {
  it('has a place for every file', () => {
    expect(FILES.length).toBeGreaterThan(300);
    expect(FILES.filter((name) => roomOf(name).floor < 0)).toEqual([]);
  });

  it('lets nobody import from their own floor or above', () => {
    const wrong = [...IMPORTS].flatMap(([from, those]) =>
      those.filter((to) => !isAllowed(from, to)).map((to) => `${from} imports ${to}`),
    );
    expect(wrong).toEqual([]);
  });

  it.each([
    ['sim/odds/gate.ts', 'sim/evidence/lean.ts'],
    ['sim/roll/roll.ts', 'sim/player/known.ts'],
    ['sim/units.ts', 'sim/maths/normal.ts'],
    ['src/screens/week/index.tsx', 'src/screens/costs/index.tsx'],
    ['src/text/format.ts', 'src/state/settings.ts'],
    ['src/controls/Field.tsx', 'src/app/Shell.tsx'],
    ['sim/odds/gate.ts', 'sim/index.ts'],
  ])('would notice that %s imports %s', (from, to) => {
    expect(isAllowed(from, to)).toBe(false);
  });

  it('has no circles', () => {
    // A file is done when all that it imports is; what is left over hangs together in a circle.
    const left = new Map(IMPORTS);
    for (let before = Number.POSITIVE_INFINITY; left.size < before; ) {
      before = left.size;
      for (const [name, those] of left) if (those.every((one) => !left.has(one))) left.delete(name);
    }
    expect([...left.keys()]).toEqual([]);
  });

  it('sees what is imported, also later and for its types alone', () => {
    const text = `import type { A } from './a.ts';\nexport { b } from '../b.tsx';\nconst c = await import('./c/d.ts');\nimport './e.css';`;
    expect(importsIn('src/app/x.ts', text)).toEqual(['src/app/a.ts', 'src/b.tsx', 'src/app/c/d.ts']);
  });

  it('is the one that DEVELOPERS.md shows', () => {
    expect(readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')).toContain(pictureOf(FLOORS));
  });
});
