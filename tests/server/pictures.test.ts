import { afterEach, expect, test } from 'vitest';
import type { PicturesResult, SheetOfTextsResult } from '../../client/protocol.ts';
import { Client, pulling, textFolder } from './client.ts';

const folder = 'file:///rigs';
const uri = `${folder}/plover.rig`;
const line = 'line main {\n  material  HMPE\n  diameter  10 mm\n  length    30 m\n  breaking  92 kN\n  outboard  eye bury 72 d taper 24 d\n}\n';
const text = `use "practice.rig"\n# 💧 a note\n${line}`;
const practice = 'practice {\n  line-factor  2 "club rule 4"\n}\n';

let client: Client;
afterEach(() => client.dispose());

async function started(files: Record<string, string> = {}): Promise<void> {
  client = new Client(textFolder(folder, new Map(Object.entries(files))));
  await client.start(pulling, { workspaceFolders: [{ uri: folder, name: 'rigs' }] });
}

const pictures = (params: unknown): Promise<PicturesResult> => client.request<PicturesResult>('linewright/pictures', params);

test('pictures of an open rig, each with the range of what it shows', async () => {
  await started({ 'practice.rig': practice });
  client.open(uri, text);
  const { pictures: found, broken, leftOut } = await pictures({ uri });
  expect(found.map((p) => [p.id, p.range.start.line, p.range.end.line])).toEqual([['line main map', 2, 8], ['line main splice main outboard', 7, 7]]);
  expect(found[1]!.range).toEqual({ start: { line: 7, character: 2 }, end: { line: 7, character: 36 } });
  expect(found[0]!.svg).toMatch(/^<svg /);
  expect([broken, leftOut]).toEqual([[], 0]);
});

test('what cannot be read is said with the pictures that it breaks', async () => {
  await started();
  client.open(uri, line.replace('10 mm', '10 mmm'));
  const { pictures: found, broken } = await pictures({ uri });
  expect(broken).toEqual([{ says: expect.stringContaining('`mmm`'), range: { start: { line: 2, character: 15 }, end: { line: 2, character: 18 } } }]);
  expect(found.every((p) => p.broken === broken[0]!.says)).toBe(true);
});

test.each([[{}], [{ uri: 7 }], [{ uri: 'no address' }], [{ uri, position: { line: -1, character: 'x' } }], [{ uri, position: { line: 99999, character: 0 } }], [null]])('%j is answered all the same', async (params) => {
  await started();
  client.open(uri, line);
  const answer = await pictures(params);
  expect(Array.isArray(answer.pictures)).toBe(true);
});

test('a sheet of other texts asks for the files that those use', async () => {
  await started({ 'practice.rig': practice });
  client.open(uri, text);
  const ask = (texts: Record<string, string | null>): Promise<SheetOfTextsResult> => client.request('linewright/sheetOfTexts', { uri, texts });
  const first = await ask({ [uri]: text.replace('92 kN', '80 kN') });
  expect(first.wants).toEqual([`${folder}/practice.rig`]);
  const then = await ask({ [uri]: text.replace('92 kN', '80 kN'), [`${folder}/practice.rig`]: practice });
  expect(then.wants).toEqual([]);
  expect(then.text).toMatch(/breaking strength, new\s+80 kN/);
  // What is open stays as it is.
  expect((await client.request<{ text: string }>('linewright/sheet', { uri })).text).toMatch(/breaking strength, new\s+92 kN/);
  expect((await ask({ [uri]: text, [`${folder}/practice.rig`]: practice })).text).toBe((await client.request<{ text: string }>('linewright/sheet', { uri })).text);
});

test('a file that the other texts do not have is not there', async () => {
  await started({ 'practice.rig': practice });
  client.open(uri, text);
  const answer = await client.request<SheetOfTextsResult>('linewright/sheetOfTexts', { uri, texts: { [uri]: text, [`${folder}/practice.rig`]: null } });
  expect(answer.wants).toEqual([]);
  expect(answer.text).toContain('line main');
  for (const texts of [undefined, null, 7, { [uri]: 7 }]) expect(await client.request('linewright/sheetOfTexts', { uri, texts })).toMatchObject({ wants: expect.any(Array) });
});

test('a rig that another one takes in is judged in the scope of that one', async () => {
  const root = `use "plover.rig"\npractice {\n  line-factor  3 "yard rule"\n}\n`;
  await started({ 'fleet.rig': root });
  client.open(uri, line);
  client.open(`${folder}/fleet.rig`, root);
  const first = await client.request<SheetOfTextsResult>('linewright/sheetOfTexts', { uri, texts: { [uri]: line } });
  expect(first.wants).toEqual([`${folder}/fleet.rig`]);
});
