import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { commands } from '../../server/cli/commands.ts';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');

/** Commands as a document gives them, with their options. */
const given = (text: string): { command: string; options: string[] }[] =>
  [...text.matchAll(/\blinewright ((?:check|compare|format|textconv|sheet|card|brief|inspect|logbook|[a-z]+)\b)([^\n`|>]*)/g)]
    .filter((m) => commands.some((c) => c.name === m[1]) || m[2]!.includes('--'))
    .map((m) => ({ command: m[1]!, options: [...m[2]!.matchAll(/--([a-z]+)(?: ([a-z]+))?/g)].map((o) => `${o[1]} ${o[2] ?? ''}`.trim()) }));

test.each(['docs/git.md', 'docs/ci.md', '.pre-commit-hooks.yaml'])('every command in %s is one, with options that it takes', (path) => {
  const found = given(read(path));
  expect(found.length).toBeGreaterThan(1);
  for (const { command, options } of found) {
    const known = commands.find((c) => c.name === command);
    expect(known, command).toBeDefined();
    for (const option of options) {
      const [name, value] = option.split(' ');
      const definition = known!.options[name!];
      expect(definition, `${command} --${name}`).toBeDefined();
      if (definition!.oneOf !== undefined && value !== undefined) expect(definition!.oneOf).toContain(value);
    }
  }
});

test('a command that is none would be seen', () => {
  expect(given('run `linewright chekc --format json` now')).toEqual([{ command: 'chekc', options: ['format json'] }]);
});
