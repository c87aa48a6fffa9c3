import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { makeBundles } from '../../esbuild.config.mjs';
import { bundledPackages, type BundledPackage } from '../scripts/bundled-packages.ts';
import { thirdPartyPage } from '../scripts/third-party-page.ts';

const root = resolve(import.meta.dirname, '../..');
const shipped = await makeBundles(undefined, { minify: true });
const packages = await bundledPackages(shipped);

describe('packages of others in what is shipped', () => {
  /** What we chose to build on: a client and a server of the language protocol, and a parser. */
  const chosen = /^(?:vscode-languageclient|vscode-languageserver|vscode-languageserver-textdocument|vscode-languageserver-types|vscode-jsonrpc|chevrotain|zod)$/;

  /** Packages that nobody chose and that no chosen one needs. */
  function strangers(all: readonly BundledPackage[]): string[] {
    const known = new Map(all.map((one) => [one.name, one]));
    const reached = new Set<string>();
    const reach = (name: string): void => {
      if (reached.has(name)) return;
      reached.add(name);
      for (const need of known.get(name)?.needs ?? []) reach(need);
    };
    for (const { name } of all) if (chosen.test(name)) reach(name);
    return all.map(({ name }) => name).filter((name) => !reached.has(name));
  }

  test('are those we chose, and what they need', () => {
    expect(strangers(packages)).toEqual([]);
    expect(packages.map(({ name }) => name)).toEqual([
      '@chevrotain/cst-dts-gen', '@chevrotain/gast', '@chevrotain/utils', 'balanced-match', 'brace-expansion', 'chevrotain', 'minimatch', 'semver',
      'vscode-jsonrpc', 'vscode-languageclient', 'vscode-languageserver', 'vscode-languageserver-protocol', 'vscode-languageserver-textdocument', 'vscode-languageserver-types',
    ]);
  });

  test('a stranger is seen', () => {
    expect(strangers([...packages, { name: 'left-over', version: '1.0.0', licence: 'MIT', text: '', needs: ['semver'] }])).toEqual(['left-over']);
  });

  test('have one version each, pinned by the lock file', () => {
    const { packages: locked } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as { packages: Record<string, { version: string; integrity?: string }> };
    for (const { name, version } of packages) expect([name, locked[`node_modules/${name}`]?.version, locked[`node_modules/${name}`]?.integrity]).toEqual([name, version, expect.stringMatching(/^sha512-/)]);
    expect(new Set(packages.map(({ name }) => name)).size).toBe(packages.length);
  });

  test('are on terms that let them be shipped so, and are listed with their texts', () => {
    expect(packages.filter(({ licence }) => !['MIT', 'ISC', 'Apache-2.0', 'BlueOak-1.0.0'].includes(licence))).toEqual([]);
    const page = readFileSync(join(root, 'THIRD-PARTY.md'), 'utf8');
    for (const { name, version, licence, text } of packages) {
      expect(page).toContain(`| ${name} | ${version} | ${licence} |`);
      expect([name, text !== undefined && text.length > 500 && page.includes(text)]).toEqual([name, true]);
    }
    expect(() => thirdPartyPage([{ ...packages[0]!, text: undefined }])).toThrow('brings no licence text');
  });

  test('nothing is installed with the extension: all of it is in the bundles', () => {
    const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<string, unknown>;
    expect(Object.keys(manifest).filter((key) => /^(?:dependencies|optionalDependencies|peerDependencies|bundle[d]?Dependencies)$/.test(key))).toEqual([]);
  });
});

describe('shipped code', () => {
  /** Ways to run text as code. */
  const dynamic = /(?<![.\w$'"])eval(?![\w$'"])|(?<![.\w$'"])Function\s*\(|\.constructor\(\s*["'`]|set(?:Timeout|Interval)\(\s*["'`]|\bvm\.run|require\(["'](?:node:)?vm["']\)/g;
  const found = (text: string): string[] => [...text.matchAll(dynamic)].map((m) => text.slice(Math.max(0, m.index - 30), m.index + 40));

  /** The two programs for Node load `engine.cjs`, the shipped file beside them, with what Node compiled of it before. */
  const loaders = ['dist/server.cjs', 'dist/linewright.cjs'];

  test('runs no text as code', () => {
    expect(shipped.length).toBe(7);
    for (const { out, bytes } of shipped) {
      const text = new TextDecoder().decode(bytes);
      expect([out, found(text)]).toEqual([out, loaders.includes(out) ? [expect.stringContaining('require("node:vm")')] : []]);
      expect([out, text.includes('"engine.cjs"')]).toEqual([out, loaders.includes(out)]);
    }
  });

  test('loads in one place only, one file only', () => {
    const uses = readdirSync(join(root, 'server'), { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts') && /node:vm/.test(readFileSync(join(root, 'server', name), 'utf8')));
    expect(uses).toEqual(['compiled-code.ts']);
    const text = readFileSync(join(root, 'server', 'compiled-code.ts'), 'utf8');
    expect(text.match(/new Script\(/g)).toHaveLength(1);
    expect(text).toContain("const path = join(dirname(program), 'engine.cjs');");
  });

  test.each(['return eval(x)', '(0,eval)(x)', 'new Function("a","b")', 'x=Function ("return this")()', 'f.constructor("return this")', 'setTimeout("a()",1)', 'require("vm")'])('%s would be seen', (text) => {
    expect(found(text)).toHaveLength(1);
  });

  test('is ASCII', () => {
    for (const { out, bytes } of shipped) expect([out, bytes.findIndex((byte) => byte > 0x7f)]).toEqual([out, -1]);
  });

  test('is the same to the byte from every build', async () => {
    const again = await makeBundles(undefined, { minify: true });
    for (const [i, { out, bytes }] of shipped.entries()) expect([out, Buffer.compare(bytes, again[i]!.bytes)]).toEqual([out, 0]);
  });

  test('does not say where it was built', () => {
    for (const { out, bytes } of shipped) expect([out, Buffer.from(bytes).includes(root)]).toEqual([out, false]);
  });
});

describe('our sources', () => {
  const folders = ['src-core', 'server', 'client', 'syntaxes'];
  const network = /['"](?:node:)?(?:https?|http2|net|tls|dgram|dns|inspector)(?:\/promises)?['"]|(?<![.\w$])fetch\s*\(|\b(?:globalThis|window|self)\.fetch\b|\bXMLHttpRequest\b|\bWebSocket\b|\bEventSource\b|\bsendBeacon\b|\bimportScripts\b/;

  test('open no connection', () => {
    const files = folders.flatMap((folder) => readdirSync(join(root, folder), { recursive: true, withFileTypes: true }).filter((e) => e.isFile() && /\.(?:[cm]?ts|[cm]?js)$/.test(e.name)).map((e) => join(e.parentPath, e.name)));
    expect(files.length).toBeGreaterThan(300);
    expect(files.filter((path) => network.test(readFileSync(path, 'utf8'))).map((path) => relative(root, path))).toEqual([]);
  });

  test.each(["import http from 'node:http';", 'import { connect } from "net";', 'await fetch(url)', 'globalThis.fetch', 'new WebSocket(x)', "import dns from 'node:dns/promises'"])('%s would be seen', (text) => {
    expect(network.test(text)).toBe(true);
  });
});
