/**
 * The engine is pure: same arguments, same answer, nothing touched. Types (sim/tsconfig.json) and lint keep out most of
 * what breaks that; this reads the text for what they let through, such as Math.random and Date.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const ROOT = fileURLToPath(new URL('../../sim', import.meta.url));

const FORBIDDEN: readonly (readonly [string, RegExp])[] = [
  ['Math.random', /\bMath\s*(\.|\?\.)\s*random\b|\bMath\s*\[|\{[^}]*\brandom\b[^}]*\}\s*=\s*Math\b/],
  ['a clock', /\bDate\b(?!\w)|\bperformance\b|\bsetTimeout\b|\bsetInterval\b/],
  ['ambient randomness', /\bcrypto\b|\brandomUUID\b/],
  ['the console', /\bconsole\b/],
  [
    'a browser',
    /\b(window|document|navigator|localStorage|sessionStorage|indexedDB|fetch|self|globalThis)\s*[.[(]/,
  ],
  ['Node', /\b(process|Buffer|require)\s*[.[(]|from\s+['"]node:|import\s*\(\s*['"]node:/],
  ['the app', /(from|import)\s*\(?\s*['"][^'"]*\/src\//],
];

/** Comments may name anything; code may not. Newlines stay, so that line numbers hold. */
const withoutComments = (text: string): string =>
  text
    .replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ' '))
    .replace(/(^|[^:'"])\/\/.*$/gm, '$1');

const findings = (name: string, text: string): string[] =>
  withoutComments(text)
    .split('\n')
    .flatMap((line, index) =>
      FORBIDDEN.filter(([, pattern]) => pattern.test(line)).map(
        ([what]) => `${name}:${index + 1} uses ${what}: ${line.trim()}`,
      ),
    );

describe('purity of the engine', () => {
  it('uses no clock, ambient randomness, console, browser, Node or app', () => {
    const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.ts'),
    );
    expect(files).toContain('index.ts');
    expect(files.flatMap((name) => findings(name, readFileSync(join(ROOT, name), 'utf8')))).toEqual([]);
  });

  it.each([
    'const x = Math.random();',
    'const { random } = Math;',
    'const now = Date.now();',
    'const now = new Date();',
    'console.log(1);',
    'window.alert(1);',
    'document.title = "";',
    "import { readFileSync } from 'node:fs';",
    "import { row } from '../../src/text/format.ts';",
    "const app = await import('../src/main.tsx');",
  ])('would notice %s', (line) => {
    expect(findings('example.ts', `/** A header. */\n${line}`)).toHaveLength(1);
  });

  it('lets comments name what code may not use', () => {
    expect(findings('example.ts', '/* no Math.random\n or Date */ const a = 1; // no console')).toEqual([]);
  });
});
