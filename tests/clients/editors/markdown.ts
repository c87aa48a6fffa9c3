import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Frame } from 'playwright-core';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { slow_ms, Workbench } from './workbench.ts';

const document = `# Lines of the Tarn Hut crew

The main line of *plover*, as it was spliced in spring:

\`\`\`rig
line spare {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  outboard  eye thimble tube bury 46 d taper 24 d
}
\`\`\`

It goes on the winch of the spare truck; what a winch { is, is prose here.

\`\`\`rig
winch rear-winch {
  rated     24 kN at layer 1
  barrel    64 mm
  width     230 mm
  flange    165 mm
  keep      10 wraps
  carries   spare
}
\`\`\`
`;

/** A build document with rigs in it: squiggles and hovers in its fences, and the preview with pictures and findings. */
export async function testMarkdown(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(editors, 'node', (_extension, workspace) => writeFile(join(workspace, 'build.md'), document), { 'linewright.codeLens.enabled': true });
  const { page, editor } = bench;
  const fenceFrame = async (holds: (frame: Frame) => Promise<boolean>, says: string): Promise<Frame> => {
    for (const end = Date.now() + slow_ms; Date.now() < end; await pause(150)) {
      for (const frame of page.frames()) if (await holds(frame).catch(() => false)) return frame;
    }
    throw new Error(says);
  };
  try {
    // The server is not running yet: a Markdown document with a rig in it must start it.
    await bench.openFile('build.md');

    await step('finding in a fence', async () => {
      await editor.locator('.squiggly-error').first().waitFor({ timeout: slow_ms });
    });

    await step('colours in a fence and not in the prose', async () => {
      const fence = editor.locator('.view-line', { hasText: /^rear-winch|^winch.rear-winch/ }).first();
      const inFence = await fence.locator('span span', { hasText: /^winch$/ }).first().evaluate((node) => (globalThis as unknown as { getComputedStyle(n: unknown): { color: string } }).getComputedStyle(node).color);
      const prose = await editor.locator('.view-line', { hasText: 'is prose here' }).first().locator('span span').first().evaluate((node) => (globalThis as unknown as { getComputedStyle(n: unknown): { color: string } }).getComputedStyle(node).color);
      assert.notEqual(inFence, prose);
    });

    await step('hover in a fence', async () => {
      await editor.locator('.view-line', { hasText: /carries/ }).locator('span span', { hasText: /^carries$/ }).first().hover();
      await page.locator('.monaco-hover:visible', { hasText: /24\skN/ }).first().waitFor({ timeout: slow_ms });
      await page.mouse.move(1000, 780);
    });

    await step('lens above the line, since it is wanted here', async () => {
      await editor.locator('.codelens-decoration', { hasText: /\d\skN/ }).first().waitFor({ timeout: slow_ms });
    });

    await step('preview with pictures and findings', async () => {
      await editor.locator('.view-line', { hasText: 'is prose here' }).first().click();
      await bench.command('Markdown: Open Preview to the Side');
      const frame = await fenceFrame(async (f) => (await f.locator('.linewright figure svg').count()) === 2 && (await f.locator('li.linewright-error', { hasText: /below the 72/ }).count()) === 1, 'no preview shows both pictures and the finding');
      assert.equal(await frame.locator('.linewright script').count(), 0);
      assert.match(await frame.locator('.linewright-verdict').first().innerText(), /checks? made/);
      await bench.screenshot('markdown-preview');
    });

    await step('the preview follows the text', async () => {
      const line = editor.locator('.view-line', { hasText: /bury/ }).first();
      await line.locator('span span', { hasText: /^46$/ }).first().dblclick();
      await page.keyboard.type('72');
      await fenceFrame(async (f) => (await f.locator('.linewright figure svg').count()) === 2 && (await f.locator('li.linewright-error').count()) === 0, 'the preview still shows the finding');
    });
  } catch (error) {
    await bench.screenshot('markdown-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
