import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32, inflateRawSync } from 'node:zlib';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { packagedIn, packExtension, type Packed } from '../scripts/pack-extension.ts';

const folders = [1, 2].map(() => mkdtempSync(join(tmpdir(), 'linewright-package-')));
let packed: readonly Packed[];

beforeAll(async () => {
  packed = [await packExtension(folders[0]!), await packExtension(folders[1]!)];
}, 120_000);
afterAll(() => folders.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

/** What a person installs. A file that is added or left out is a decision: it is written here as well. */
const contents = [
  '[Content_Types].xml',
  'extension.vsixmanifest',
  'extension/LICENSE.txt',
  'extension/THIRD-PARTY.md',
  'extension/changelog.md',
  'extension/client/media/fence.css',
  'extension/client/media/linewright.png',
  'extension/client/media/rig-dark.svg',
  'extension/client/media/rig-light.svg',
  'extension/client/media/sample.rig',
  'extension/client/media/walkthrough/margin.md',
  'extension/client/media/walkthrough/mend.md',
  'extension/client/media/walkthrough/open.md',
  'extension/client/media/walkthrough/own.md',
  'extension/client/media/walkthrough/read.md',
  'extension/dist/client-web.js',
  'extension/dist/client.cjs',
  'extension/dist/engine.cjs',
  'extension/dist/linewright.cjs',
  'extension/dist/pictures-view.js',
  'extension/dist/server-web.js',
  'extension/dist/server.cjs',
  'extension/docs/reference/glossary.md',
  'extension/docs/reference/language.md',
  'extension/docs/reference/pictures/chain.svg',
  'extension/docs/reference/pictures/pull.svg',
  'extension/docs/reference/pictures/repair.svg',
  'extension/docs/reference/pictures/winch.svg',
  'extension/docs/tutorial.md',
  'extension/package.json',
  'extension/package.nls.json',
  'extension/readme.md',
  'extension/syntaxes/language-configuration.json',
  'extension/syntaxes/markdown-rig.injection.json',
  'extension/syntaxes/rig.snippets.json',
  'extension/syntaxes/rig.tmLanguage.json',
];

test('the extension holds these files and no others', () => {
  expect([...packed[0]!.files].sort()).toEqual([...contents].sort());
});

test('it is small', () => {
  expect(packed[0]!.files.length).toBeLessThanOrEqual(40);
  expect(packed[0]!.bytes.length).toBeLessThan(1_000_000);
});

test('every file in it unpacks to what its two heads say', () => {
  const { bytes } = packed[0]!;
  for (const { name, head, data } of packagedIn(bytes)) {
    const whole = head.readUInt16LE(10) === 8 ? inflateRawSync(data) : data;
    expect([name, crc32(whole), whole.length]).toEqual([name, head.readUInt32LE(16), head.readUInt32LE(24)]);
    const local = head.readUInt32LE(42);
    expect(bytes.toString('latin1', local, local + 4)).toBe('PK\x03\x04');
    expect(bytes.subarray(local + 4, local + 28)).toEqual(head.subarray(6, 30));
  }
});

test('two builds in two places give the same bytes', () => {
  expect(packed[0]!.path).not.toBe(packed[1]!.path);
  expect(Buffer.compare(packed[0]!.bytes, packed[1]!.bytes)).toBe(0);
});
