import assert from 'node:assert/strict';
import { copyFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expected } from '../expected.ts';
import { showMainJob } from './main-job.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { slow_ms, Workbench } from './workbench.ts';

/** The packed extension in VS Code with a Node extension host, first with a server that cannot start and then with the real one. */
export async function testVscode(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(editors, 'node', async (extension) => {
    const server = join(extension, 'dist', 'server.cjs');
    await copyFile(server, `${server}.kept`);
    await writeFile(server, 'process.exit(1);\n');
  });
  const { page, editor } = bench;
  try {
    await bench.openRig();

    await step('colours without the server', async () => {
      const colours: string[] = [];
      for (const text of Object.values(expected.colours)) {
        await bench.piece(text).waitFor({ timeout: slow_ms });
        colours.push(await bench.colourOf(text));
      }
      assert.equal(new Set(colours).size, colours.length, `comment, block, unit and string differ: ${colours.join(' ')}`);
      await bench.screenshot('vscode-colours');
    });

    await step('one message when the server keeps stopping', async () => {
      const messages = page.locator('.notification-list-item', { hasText: 'Linewright' });
      await messages.filter({ hasText: 'Show the Log' }).waitFor({ timeout: slow_ms });
      assert.equal(await messages.count(), 1);
      await bench.screenshot('vscode-stopped');
    });

    await step('restart from the message', async () => {
      const server = join(bench.extension, 'dist', 'server.cjs');
      await copyFile(`${server}.kept`, server);
      await page.locator('.notification-list-item .monaco-button', { hasText: 'Restart' }).click();
      await editor.locator('.squiggly-warning, .squiggly-error').first().waitFor({ timeout: slow_ms });
    });

    await showMainJob(bench, step, 'vscode');

    await step('colours with the server', async () => {
      assert.notEqual(await bench.colourOf(expected.colours.comment), await bench.colourOf(expected.colours.block));
    });

    await step('sheet beside the rig', async () => {
      await editor.locator('.view-line', { hasText: expected.hover.line }).first().click();
      await bench.command('Linewright: Show the Sheet of This Rig');
      const sheet = page.locator('.editor-group-container').nth(1).locator('.view-line', { hasText: expected.sheet }).first();
      await sheet.waitFor({ timeout: slow_ms });
      await bench.screenshot('vscode-sheet');
    });

    await step('sample opens with its faults underlined', async () => {
      await bench.command('Linewright: Open a Sample Rig');
      await page.locator('.tab.active', { hasText: 'Untitled' }).waitFor({ timeout: slow_ms });
      await page.locator('.editor-group-container.active .squiggly-warning, .editor-group-container.active .squiggly-error').first().waitFor({ timeout: slow_ms });
    });
  } catch (error) {
    await bench.screenshot('vscode-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
