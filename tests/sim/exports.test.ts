/**
 * The engine's door hides no collision: of two names alike, one by name and one by `export *`, the first wins without a word, and two
 * by `export *` both vanish. The door's text is read as the language has it (ECMAScript, ResolveExport: own names before stars).
 */
import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';

const SIM = resolve('sim');
const DOOR = resolve(SIM, 'index.ts');

interface Exported {
  readonly name: string;
  /** Relative to sim. */
  readonly file: string;
}

const text = (file: string): string => readFileSync(resolve(SIM, file), 'utf8');

/** Names a module declares for export, types too; the house exports declarations, lists and nothing else. */
const declaredIn = (source: string): string[] => [
  ...[
    ...source.matchAll(
      /^export (?:declare |abstract |async )*(?:const|let|function\*?|class|interface|type|enum) +(\w+)/gm,
    ),
  ].map(([, name]) => name),
  ...[...source.matchAll(/^export (?:type )?\{([^}]*)\}(?! from)/gm)].flatMap(([, list]) => namesOf(list)),
];
/** Of `{ type A, b as c }`: what they are called outside. */
const namesOf = (list: string): string[] =>
  list
    .split(',')
    .map((one) => one.trim().replace(/^type /, ''))
    .filter((one) => one !== '')
    .map((one) => one.split(' as ').at(-1) as string);

const door = text('index.ts');
const byStar = [...door.matchAll(/^export \* from '\.\/([^']+)';/gm)].map(([, file]) => file);
const byName: Exported[] = [...door.matchAll(/^export (?:type )?\{([^}]*)\} from '\.\/([^']+)';/gm)].flatMap(
  ([, list, file]) => namesOf(list).map((name) => ({ name, file })),
);
const all: Exported[] = [
  ...byName,
  ...byStar.flatMap((file) => declaredIn(text(file)).map((name) => ({ name, file }))),
];

describe('the door of the engine', () => {
  it('is read whole: every statement is one of two forms, every file is there, every star is followed', () => {
    const statements = door.match(/^export\b/gm)?.length ?? 0;
    expect(byStar.length).toBeGreaterThan(0);
    expect(new Set(byName.map(({ file }) => file)).size + byStar.length).toBe(statements);
    for (const { file } of all) expect(existsSync(resolve(SIM, file))).toBe(true);
    // A module behind a star that has stars itself would need following too.
    for (const file of byStar) expect(text(file)).not.toMatch(/^export \*/m);
  });

  it('gives no name to two things', () => {
    const filesOf = new Map<string, Set<string>>();
    for (const { name, file } of all) filesOf.set(name, (filesOf.get(name) ?? new Set()).add(file));
    expect([...filesOf].filter(([, files]) => files.size > 1)).toEqual([]);
  });

  it('hands on the very values that its modules export', async () => {
    const whole = (await import(pathToFileURL(DOOR).href)) as Record<string, unknown>;
    const expected = new Map<string, unknown>();
    for (const file of new Set(all.map(({ file: one }) => one))) {
      const module = (await import(pathToFileURL(resolve(SIM, file)).href)) as Record<string, unknown>;
      for (const { name, file: from } of all)
        if (from === file && name in module) {
          expected.set(name, module[name]);
          expect(whole[name], `${name} of ${file}`).toBe(module[name]);
        }
    }
    expect(Object.keys(whole).sort()).toEqual([...expected.keys()].sort());
  });
});
