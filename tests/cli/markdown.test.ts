import { expect, test } from 'vitest';
import { Client, pulling, type Diagnostic } from '../server/client.ts';
import { world } from './world.ts';

const fence = (rig: string): string => `\`\`\`rig\n${rig}\`\`\`\n`;
const document = `# Build é\n\n${fence('use "gear.rig"\n\nkit bag {\n  carries  trunk\n  carrys   trunk\n}\n')}\nprose {\n`;
const files = { 'gear.rig': 'strap trunk {\n  wll  4 t\n}\n', 'docs/build.md': document.replace('gear.rig', '../gear.rig'), 'README.md': '# No rig here\n' };

test('the fences of a document that is named are judged, at their real lines', async () => {
  const { linewright } = world(files);
  const { code, out } = await linewright('check', 'docs/build.md');
  expect(code).toBe(1);
  expect(out).toMatch(/^docs\/build\.md:8:3 error\[unknown-statement\]/m);
  expect(out).not.toContain('use-missing');
  expect(out).toContain('2 files: ');
});

test('documents in a folder count when they are asked for and hold a rig', async () => {
  const { linewright } = world(files);
  expect((await linewright('check')).out).not.toContain('build.md');
  const { out } = await linewright('check', '--markdown', '--format', 'json');
  expect((JSON.parse(out) as { files: string[] }).files).toEqual(['docs/build.md', 'gear.rig']);
});

test('a document without a rig is told when it is named', async () => {
  const { linewright } = world(files);
  for (const command of ['check', 'sheet', 'tokens']) expect(await linewright(command, 'README.md')).toMatchObject({ code: 2, err: `linewright ${command}: README.md holds no rig fence\n` });
});

test('a document is shown to git in its own lines', async () => {
  const { linewright } = world(files);
  const { code, out } = await linewright('textconv', 'docs/build.md');
  expect(code).toBe(0);
  expect(out).toMatch(/^# Build é\n\n```rig\nuse "\.\.\/gear\.rig"\n[^]*\n  ! error\[unknown-statement\][^]*\n```\n\nprose \{\n/);
  expect(out).not.toMatch(/stray|unclosed/);
});

test('a document is not laid out', async () => {
  const { linewright } = world(files);
  const { code, err } = await linewright('format', 'docs/build.md');
  expect([code, err]).toEqual([2, 'linewright format: docs/build.md is a Markdown document, which is laid out by hand\n']);
});

test('editor and command line say the same of a document', async () => {
  const text = document.replace('use "gear.rig"\n', '');
  const { linewright } = world({ 'build.md': text });
  const said = JSON.parse((await linewright('check', 'build.md', '--format', 'json')).out) as { findings: { code: string; line: number; column: number; message: string }[] };
  const client = new Client();
  await client.start(pulling);
  client.notify('textDocument/didOpen', { textDocument: { uri: 'file:///rigs/build.md', languageId: 'markdown', version: 1, text } });
  const items = (await client.pull('file:///rigs/build.md')).items as readonly Diagnostic[];
  client.dispose();
  expect(items.length).toBeGreaterThan(1);
  expect(items.map((d) => `${d.range.start.line + 1}:${d.range.start.character + 1} ${d.code} ${d.message.split('\n')[0]}`)).toEqual(said.findings.map((f) => `${f.line}:${f.column} ${f.code} ${f.message}`));
});
