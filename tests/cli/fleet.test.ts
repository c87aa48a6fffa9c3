import { join } from 'node:path';
import { expect, test } from 'vitest';
import { FleetWorkers, judgeHere } from '../../server/cli/fleet/judge-roots.ts';
import { widelyUsed } from '../../server/cli/fleet/print-order.ts';
import type { JudgedRig, Judging } from '../../server/cli/fleet/root-judge.ts';
import { progressLine } from '../../server/cli/progress-line.ts';
import { run } from '../../server/cli/run.ts';
import { readDay } from '../../src-core/model/day.ts';
import { rigText } from '../support/rig-text.ts';
import { program, runIn, shortBury, soundLine, world } from './world.ts';

type Files = Record<string, string | Uint8Array>;

/** Rigs with findings of all kinds: shared files, loops, files that are not there, things that cannot be read. */
function mixedFleet(): Files {
  const files: Files = {
    'common/practice.rig': 'practice {\n  line-factor  2\n}\nline {\n',
    'common/anchors.rig': 'use "deep.rig"\nanchor shared-tree {\n  kind  tree\n}\n',
    'common/deep.rig': 'strap shared {\n  wll\n}\nuse "anchors.rig"\n',
    'loop/a.rig': `use "b.rig"\nuse "a.rig"\n${shortBury}`,
    'loop/b.rig': 'use "a.rig"\n',
    'zz/latin.rig': new Uint8Array([0x6c, 0xe9, 0x0a]),
    'odd/open.rig': 'line main {\n use "x"\nuse "../loop/b.rig" {\nanchor x {\n',
    'odd/out.rig': 'use "../../x.rig"\nuse "quote\n',
    'docs/a.md': '# x\n\n```rig\nuse "../common/practice.rig"\nline main {\n  length 3 m\n}\n```\n',
  };
  for (let i = 0; i < 60; i++) {
    const uses = `${i % 4 === 0 ? 'use "../common/practice.rig"\n' : ''}${i % 5 === 0 ? 'use "../common/anchors.rig"\nuse "../common/gone.rig"\n' : ''}`;
    const text = rigText(40 + (i % 30), i + 1).replace(i % 3 === 0 ? 'bury 72 d' : '', i % 3 === 0 ? 'bury 46 d' : '');
    files[`rigs-${i % 4}/truck-${i}.rig`] = uses + (i % 7 === 0 ? text.replace(/ +diameter .*\n/, '') : text);
  }
  return files;
}

async function all(rigs: AsyncIterable<JudgedRig>): Promise<JudgedRig[]> {
  const list: JudgedRig[] = [];
  for await (const rig of rigs) list.push(rig);
  return list;
}

test.each(['text', 'json', 'sarif', 'github'])('%s is the same to the byte from one thread and from several', async (format) => {
  const { linewright } = world(mixedFleet());
  const one = await linewright('check', '--markdown', '--format', format, '--jobs', '1');
  const several = await linewright('check', '--markdown', '--format', format, '--jobs', '3');
  expect(one.out.length).toBeGreaterThan(2000);
  expect(several).toEqual(one);
  expect(one.code).toBe(2);
});

test('other threads judge as this one does, and hand on in the order that was asked for', async () => {
  const { folder } = world(mixedFleet());
  const judging: Judging = { folder, cwd: folder, day: readDay('2026-06-22')!, telling: { format: 'json', width: undefined, styled: false } };
  const roots = [...Array.from({ length: 60 }, (_, i) => `rigs-${i % 4}/truck-${i}.rig`), 'loop/a.rig', 'odd/out.rig', 'gone.rig'];
  const expected = await all(judgeHere(judging, roots));
  expect(expected.map(({ root }) => root)).toEqual(roots);
  expect(expected.at(-1)).toEqual({ root: 'gone.rig', files: [], absent: 'missing' });
  const workers = new FleetWorkers(program, 2);
  try {
    // They take part once they are loaded; until then this thread is alone.
    while (workers.taken < 6) expect(await all(workers.judge(judging, roots))).toEqual(expected);
  } finally {
    await workers.stop();
  }
});

test('a thread that cannot start is a fault, and not a rig without findings', async () => {
  const { folder } = world({ 'a.rig': soundLine });
  const workers = new FleetWorkers(join(folder, 'no-program.cjs'), 1);
  const judging: Judging = { folder, cwd: folder, day: readDay('2026-06-22')!, telling: { format: 'text', width: undefined, styled: false } };
  const roots = Array.from({ length: 100_000 }, () => 'a.rig');
  await expect(all(workers.judge(judging, roots))).rejects.toThrow('no-program.cjs');
  await workers.stop();
});

test('findings come in the order of the files, those of a shared file once', async () => {
  const { linewright } = world(mixedFleet());
  const { out } = await linewright('check');
  const files = out.split('\n').flatMap((line) => /^(\S+\.rig):\d+:\d+ /.exec(line)?.[1] ?? []);
  expect(files).toEqual([...files].sort());
  expect(out.match(/^common\/practice\.rig:\d+:\d+ error/gm)).toHaveLength(2);
  expect(files[0]).toBe('common/deep.rig');
});

/** Rigs that all use one file in which something is found. */
const sharing = (count: number): Files => ({
  'a.rig': 'line {\n}\n',
  ...Object.fromEntries(Array.from({ length: count }, (_, i) => [`b/${String(i).padStart(4, '0')}.rig`, `use "../a.rig"\n${i % 2 === 0 ? shortBury : soundLine}`])),
});

test('a file that very many rigs take in is told of after them', async () => {
  const first = async (count: number): Promise<(string | undefined)[]> => {
    const { out } = await world(sharing(count)).linewright('check');
    const files = out.split('\n').flatMap((line) => /^(\S+\.rig):\d+:\d+ /.exec(line)?.[1] ?? []);
    return [files[0], files.at(-1)];
  };
  expect((await first(widelyUsed))[0]).toBe('a.rig');
  expect(await first(widelyUsed + 1)).toEqual(['b/0000.rig', 'a.rig']);
});

test('what is found is printed before the next rig is judged', async () => {
  const { folder } = world({ 'a.rig': shortBury, 'b.rig': soundLine, 'c.rig': shortBury });
  const events: string[] = [];
  await run(['check', '--jobs', '1'], {
    cwd: folder, out: (text) => void events.push(/^\S+/.exec(text)![0]), err: () => undefined, today: () => '2026-06-22', styled: false, width: undefined, progress: (text) => void events.push(text),
  });
  const at = (what: string): number => events.findIndex((event) => event.startsWith(what));
  expect(events.filter((event) => event.endsWith('judged'))).toEqual(['1 of 3 rigs judged', '2 of 3 rigs judged', '3 of 3 rigs judged']);
  expect([0 < at('a.rig'), at('a.rig') < at('2 of 3'), at('3 of 3') < at('c.rig')]).toEqual([true, true, true]);
});

test('a block that several rigs share is counted once', async () => {
  const anchor = 'use "p.rig"\nanchor tree {\n  kind  tree\n  girth  1.5 m\n}\n';
  const counts = async (files: Files) => (JSON.parse((await world(files).linewright('check', '--format', 'json')).out) as { checks: object }).checks;
  const shared = await counts({ 'p.rig': soundLine, 'a.rig': anchor, 'b.rig': 'use "p.rig"\n', 'c.rig': 'use "p.rig"\n' });
  expect(shared).toEqual(await counts({ 'p.rig': soundLine, 'a.rig': anchor }));
});

test.each(['0', '-1', 'two', '1.5', '99999'])('--jobs %s is refused', async (jobs) => {
  const { code, err } = await world({ 'a.rig': soundLine }).linewright('check', `--jobs=${jobs}`);
  expect([code, err]).toEqual([2, `linewright check: --jobs takes a whole number from 1, not \`${jobs}\`\n`]);
});

test('without progress nothing of it is written', async () => {
  const { folder } = world({ 'a.rig': soundLine });
  const seen: string[] = [];
  expect((await runIn(folder, ['check'], { progress: (text) => void seen.push(text) })).err).toBe('');
  expect(seen).toEqual(['1 of 1 rig judged']);
});

test('the line of progress comes late, seldom, and leaves nothing behind', () => {
  let now = 0;
  let written = '';
  const line = progressLine((text) => void (written += text), () => now);
  line.show('too early');
  line.clear();
  expect(written).toBe('');
  for (const [at, text] of [[600, 'one'], [610, 'two'], [750, 'three']] as const) {
    now = at;
    line.show(text);
  }
  line.clear();
  line.clear();
  expect(written).toBe('\rone\u001b[K\rthree\u001b[K\r\u001b[K');
});
