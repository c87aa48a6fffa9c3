import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { expected } from '../expected.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { repository } from './workbench.ts';

interface Answer {
  readonly diagnostics: readonly { readonly line: number; readonly message: string; readonly source?: string }[];
  readonly hover: { readonly contents: unknown } | null;
}

/** Neovim's own language client, which takes pushed findings and knows nothing of this project. */
export async function testNeovim(editors: Editors, step: Step): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'linewright-neovim-'));
  try {
    const workspace = join(folder, 'examples');
    await cp(join(repository, 'examples'), workspace, { recursive: true });
    const lines = (await readFile(join(workspace, expected.rig), 'utf8')).split('\n');
    const hoverLine = lines.findIndex((line) => expected.hover.line.test(line));
    const answerFile = join(folder, 'answer.json');
    const given = {
      command: [process.execPath, join(repository, 'dist', 'linewright.cjs'), 'serve', '--stdio'],
      hoverLine,
      hoverColumn: lines[hoverLine]!.indexOf(expected.hover.word),
      asOf: expected.asOf,
      answer: answerFile,
    };
    const script = fileURLToPath(new URL('neovim.lua', import.meta.url));
    let answer: Answer = { diagnostics: [], hover: null };

    await step('opens the rig and ends', async () => {
      await promisify(execFile)(editors.neovim, ['--headless', '-u', 'NONE', '-i', 'NONE', expected.rig, '-c', `luafile ${script}`], {
        cwd: workspace,
        timeout: 90_000,
        env: { ...process.env, HOME: folder, XDG_STATE_HOME: folder, XDG_CACHE_HOME: folder, LINEWRIGHT_TRY: JSON.stringify(given) },
      });
      answer = JSON.parse(await readFile(answerFile, 'utf8')) as Answer;
    });
    await step('finding on its line', async () => {
      const finding = answer.diagnostics.find(({ message }) => expected.finding.message.test(message));
      assert.ok(finding !== undefined, `found instead: ${JSON.stringify(answer.diagnostics)}`);
      assert.match(lines[finding.line]!, expected.finding.under);
    });
    await step('hover shows the derived numbers', async () => {
      assert.match(JSON.stringify(answer.hover), expected.hover.answer);
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
