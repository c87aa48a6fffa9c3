import { existsSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { commands } from '../../client/command-names.ts';
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
  ];
  expect(named.filter((path) => !existsSync(at(path)))).toEqual([]);
});

test('a rig is never reformatted by saving it', () => {
  expect(contributes.configurationDefaults['[rig]']).toMatchObject({ 'editor.formatOnSave': false, 'editor.formatOnPaste': false });
});
