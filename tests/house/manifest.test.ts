import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { commands } from '../../client/command-names.ts';
import { run } from '../../server/cli/run.ts';
import { tokenLegend } from '../../server/language-server/capabilities.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';
import { bundles } from '../../esbuild.config.mjs';

const at = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const text = readFileSync(at('package.json'), 'utf8');
const manifest = JSON.parse(text) as {
  main: string;
  browser: string;
  icon: string;
  bin: Record<string, string>;
  contributes: {
    commands: { command: string }[];
    languages: { configuration: string; icon: { light: string; dark: string } }[];
    grammars: { path: string }[];
    snippets: { path: string }[];
    'markdown.previewStyles': string[];
    walkthroughs: { steps: { description: string; media: { markdown: string }; completionEvents: string[] }[] }[];
    semanticTokenScopes: { language: string; scopes: Record<string, string[]> }[];
    problemMatchers: { name: string; pattern: { regexp: string; file: number; line: number; column: number; severity: number; code: number; message: number } }[];
    configuration: { properties: Record<string, unknown> }[];
    configurationDefaults: Record<string, Record<string, unknown>>;
  };
};
const { contributes } = manifest;

test('every text of the manifest has its words, and no words are left over', () => {
  const words = JSON.parse(readFileSync(at('package.nls.json'), 'utf8')) as Record<string, string>;
  const used = [...text.matchAll(/"%([^%"]+)%"/g)].map((match) => match[1]!);
  expect([...new Set(used)].sort()).toEqual(Object.keys(words).sort());
});

test('every command of the manifest is carried out by the extension, and the other way round', () => {
  expect(contributes.commands.map(({ command }) => command).sort()).toEqual(Object.values(commands).sort());
});

test('what the manifest starts is what the build makes', () => {
  const started = [manifest.main, manifest.browser, ...Object.values(manifest.bin)].map((path) => path.replace(/^\.\//, ''));
  const built = Object.values(bundles).map(({ out }) => out);
  expect(started.filter((path) => !built.includes(path))).toEqual([]);
});

test('every file that the manifest names exists', () => {
  const named = [
    manifest.icon,
    ...contributes.languages.flatMap(({ configuration, icon }) => [configuration, icon.light, icon.dark]),
    ...contributes.grammars.map(({ path }) => path),
    ...contributes.snippets.map(({ path }) => path),
    ...contributes['markdown.previewStyles'],
    ...contributes.walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.markdown)),
  ];
  expect(named.filter((path) => !existsSync(at(path)))).toEqual([]);
});

test('a rig is never reformatted by saving it', () => {
  expect(contributes.configurationDefaults['[rig]']).toMatchObject({ 'editor.formatOnSave': false, 'editor.formatOnPaste': false });
});

test('the walkthrough is short, and its commands are ours or the editor\'s', () => {
  const words = JSON.parse(readFileSync(at('package.nls.json'), 'utf8')) as Record<string, string>;
  for (const { steps } of contributes.walkthroughs) {
    expect(steps.length).toBeLessThanOrEqual(5);
    for (const { description, completionEvents } of steps) {
      const [, command] = /\(command:([\w.]+)\)/.exec(words[description.replaceAll('%', '')]!)!;
      expect(completionEvents).toEqual([`onCommand:${command}`]);
      if (command!.startsWith('linewright.')) expect(Object.values(commands)).toContain(command);
    }
  }
});

test('the sample has the two faults that it speaks of on any day, and mending one leaves the other', () => {
  const sample = readFileSync(at('client/media/sample.rig'), 'utf8');
  expect(sample.split('\n')[0]).toBe('# A small rig with two faults: a planned bury that is too short, and too few wraps kept on the drum.');
  const faults = (text: string, on: string): string[] => {
    const project = new Project();
    project.set('sample.rig', text);
    return project.findings('sample.rig', readDay(on)!).filter((f) => f.severity !== 'information').map((f) => f.code);
  };
  for (const on of ['2026-06-22', '2040-01-01']) expect(faults(sample, on).sort()).toEqual(['bury-too-short', 'wraps-below-practice']);
  expect(faults(sample.replace('46 d', '72 d'), '2026-06-22')).toEqual(['wraps-below-practice']);
});

test('the problem matcher reads what the command line prints', async () => {
  let out = '';
  await run(['check', 'plover.rig', '--on', '2026-06-22'], { cwd: fileURLToPath(at('examples')), out: (printed) => void (out += printed), err: () => undefined, today: () => '2026-06-22', styled: false, width: undefined });
  const { regexp, ...groups } = contributes.problemMatchers[0]!.pattern;
  const found = out.split('\n').flatMap((line) => new RegExp(regexp).exec(line) ?? []).length;
  const findings = out.split('\n').filter((line) => line.startsWith('plover.rig:'));
  expect(findings.length).toBeGreaterThan(5);
  expect(found).toBe(findings.length * 7);
  const match = new RegExp(regexp).exec(findings.find((line) => line.includes('[bury-too-short]'))!)!;
  expect([match[groups.file], match[groups.severity], match[groups.code]]).toEqual(['plover.rig', expect.stringMatching(/^(?:error|warning)$/), 'bury-too-short']);
  expect(Number(match[groups.line])).toBeGreaterThan(0);
  expect(match[groups.message]).toMatch(/^bury of/);
});

test('every colour that the server names has a scope to fall back on, which the grammar knows', () => {
  const { scopes } = contributes.semanticTokenScopes[0]!;
  expect(tokenLegend.tokenTypes.filter((type) => scopes[type] === undefined)).toEqual([]);
  const grammar = readFileSync(at('syntaxes/rig.tmLanguage.json'), 'utf8');
  for (const scope of Object.values(scopes).flat()) expect(grammar.includes(`"${scope}"`) || grammar.includes(scope.replace('.rig', '.')), scope).toBe(true);
});
