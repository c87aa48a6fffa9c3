import assert from 'node:assert/strict';
import { copyFile, writeFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
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

    await step('no lenses unless they are wanted', async () => {
      assert.equal(await page.locator('.codelens-decoration').count(), 0);
    });

    await step('the walkthrough mends one fault of the sample, and the margin changes', async () => {
      await bench.command('Welcome: Open Walkthrough...');
      await page.locator('.quick-input-widget .monaco-list-row', { hasText: 'Check a First Rig' }).first().click();
      const steps = page.locator('.gettingStartedContainer .step-title', { hasText: /./ });
      await steps.filter({ hasText: 'Open a rig with two faults' }).waitFor({ timeout: slow_ms });
      await bench.screenshot('vscode-walkthrough');
      const button = (label: string) => page.locator('.gettingStartedContainer .button-link, .gettingStartedContainer .monaco-button', { hasText: label }).first();
      await button('Open the Sample').click();
      const sample = page.locator('.editor-group-container.active .monaco-editor').first();
      await sample.locator('.squiggly-error').first().waitFor({ timeout: slow_ms });
      await bench.command('Linewright: Show the Sheet of This Rig');
      const beside = page.locator('.editor-group-container').nth(1);
      await beside.locator('.view-line', { hasText: /Untitled-1/ }).first().click();
      await page.keyboard.press('Control+G');
      await page.keyboard.type('104\n');
      const sheet = beside.locator('.view-line', { hasText: /breaking.strength.+77.to.85\.7.kN/ });
      await sheet.first().waitFor({ timeout: slow_ms });
      await page.locator('.tab', { hasText: /Welcome|Walkthrough/ }).first().click();
      await steps.filter({ hasText: 'Mend the bury' }).click();
      await button('Write the Full Bury').click();
      await beside.locator('.view-line', { hasText: /breaking.strength.+120.to.134.kN/ }).first().waitFor({ timeout: slow_ms });
      assert.equal(await sheet.count(), 0);
      await bench.screenshot('vscode-mended');
    });

    await step('what was compiled is kept where the editor takes it away with the extension', async () => {
      // The server sees to it when it has run for a while.
      const kept = (): Promise<string[]> => readdir(bench.storage).catch(() => []);
      for (const end = Date.now() + slow_ms; (await kept()).join() !== 'server.compiled' && Date.now() < end; ) await pause(500);
      assert.deepEqual(await kept(), ['server.compiled']);
    });
  } catch (error) {
    await bench.screenshot('vscode-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
