import assert from 'node:assert/strict';
import { readdir, readFile } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { problemRow, slow_ms, Workbench } from './workbench.ts';

/** The process of the server that this test's own copy of the extension started; undefined while there is none. */
async function serverProcess(extension: string): Promise<number | undefined> {
  for (const id of await readdir('/proc')) {
    if (!/^\d+$/.test(id)) continue;
    const words = await readFile(`/proc/${id}/cmdline`, 'utf8').catch(() => '');
    if (words.includes(`${extension}/dist/server.cjs`)) return Number(id);
  }
  return undefined;
}

/** The server is killed while somebody types: it comes back, nothing is lost, and at last there is one message. */
export async function testCrash(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(editors, 'node');
  const { page, editor, extension } = bench;
  let last: number | undefined;
  const kill = async (): Promise<void> => {
    for (const end = Date.now() + slow_ms; ; await pause(100)) {
      const id = await serverProcess(extension);
      if (id !== undefined && id !== last) {
        last = id;
        process.kill(id, 'SIGKILL');
        return;
      }
      assert.ok(Date.now() < end, 'no new server has been started');
    }
  };
  const messages = page.locator('.notification-list-item', { hasText: 'Linewright' });
  try {
    await bench.openRig();
    await editor.locator('.squiggly-warning, .squiggly-error').first().waitFor({ timeout: slow_ms });

    await step('killed while typing, it comes back and nothing is lost', async () => {
      await editor.locator('.view-line', { hasText: /^vehicle/ }).first().click();
      await page.keyboard.press('Control+Home');
      await page.keyboard.type('strap first {');
      await kill();
      await page.keyboard.press('End');
      await page.keyboard.press('Enter');
      await page.keyboard.type('wlll 4 t');
      const typed = editor.locator('.view-line', { hasText: /wlll.4.t/ });
      await typed.waitFor({ timeout: slow_ms });
      // Only a new server that was sent the whole text can know this word.
      await page.keyboard.press('Control+Shift+M');
      await problemRow(page, 'unknown-statement', /wlll/);
      assert.match(await editor.locator('.view-line', { hasText: /^strap.first/ }).first().innerText(), /strap.first.\{/);
      assert.equal(await messages.count(), 0);
    });

    await step('four restarts, then one message', async () => {
      // What is typed meets a server that just stopped: such a write fails, and must not end in silence.
      await editor.locator('.view-line', { hasText: /wlll.4.t/ }).first().click();
      await page.keyboard.press('End');
      let typing = true;
      const typed = (async () => {
        while (typing) await page.keyboard.type(' # x', { delay: 5 });
      })();
      try {
        for (let time = 2; time <= 5; time++) await kill();
      } finally {
        typing = false;
        await typed;
      }
      await messages.filter({ hasText: 'Show the Log' }).waitFor({ timeout: slow_ms });
      await pause(1500);
      assert.equal(await messages.count(), 1);
      assert.equal(await serverProcess(extension), undefined);
      await bench.screenshot('vscode-crashed');
    });

    await step('restarted by hand, it knows the text', async () => {
      await page.locator('.notification-list-item .monaco-button', { hasText: 'Restart' }).click();
      await problemRow(page, 'unknown-statement', /wlll/);
    });

    await step('one that hangs is restarted by hand, asked for twice', async () => {
      const hanging = await serverProcess(extension);
      assert.ok(hanging !== undefined);
      process.kill(hanging, 'SIGSTOP');
      await page.locator('.notifications-toasts .codicon-notifications-clear').first().click({ timeout: 1000 }).catch(() => undefined);
      const restart = () => bench.command('Linewright: Restart the Server');
      await restart();
      await restart();
      for (const end = Date.now() + slow_ms; ; await pause(100)) {
        const id = await serverProcess(extension);
        if (id !== undefined && id !== hanging) break;
        assert.ok(Date.now() < end, 'no new server has been started');
      }
      await editor.locator('.view-line', { hasText: /wlll.4.t/ }).first().click();
      await page.keyboard.press('Home');
      await page.keyboard.type('x');
      await problemRow(page, 'unknown-statement', /xwlll/);
      assert.equal(await messages.count(), 0);
      await bench.screenshot('vscode-restarted');
    });
  } catch (error) {
    await bench.screenshot('crash-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
