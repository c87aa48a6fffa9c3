import assert from 'node:assert/strict';
import { expected } from '../expected.ts';
import type { Step } from './steps.ts';
import { problemRow, slow_ms, type Workbench } from './workbench.ts';

/** What a reader sees of an open rig wherever the extension runs: squiggle, hover, problem list. */
export async function showMainJob(bench: Pick<Workbench, 'page' | 'editor' | 'screenshot'>, step: Step, name: string): Promise<void> {
  const { page, editor } = bench;

  await step('squiggle under the finding', async () => {
    await editor.locator('.squiggly-warning, .squiggly-error').first().waitFor({ timeout: slow_ms });
    await bench.screenshot(`${name}-squiggle`);
  });

  await step('hover shows the derived numbers', async () => {
    const line = editor.locator('.view-line', { hasText: expected.hover.line }).first();
    await line.locator('span span', { hasText: new RegExp(`^${expected.hover.word}$`) }).first().hover();
    const hover = page.locator('.monaco-hover:visible', { hasText: expected.hover.answer }).first();
    await hover.waitFor({ timeout: slow_ms });
    console.log(`   ${(await hover.innerText()).replace(/\s+/g, ' ').trim().slice(0, 200)}`);
    await bench.screenshot(`${name}-hover`);
    await page.mouse.move(1000, 780);
  });

  await step('problem list holds the finding', async () => {
    await page.keyboard.press('Control+Shift+M');
    const problem = await problemRow(page, expected.finding.code, expected.finding.message);
    const row = (await problem.innerText()).replace(/\s+/g, ' ').trim();
    console.log(`   ${row.slice(0, 200)}`);
    assert.ok(row.includes(expected.finding.code), `the row names its code ${expected.finding.code}: ${row}`);
    await bench.screenshot(`${name}-problems`);
    await page.keyboard.press('Control+J');
    await problem.waitFor({ state: 'hidden', timeout: slow_ms });
  });
}
