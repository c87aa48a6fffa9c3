import { showMainJob } from './main-job.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { picturesFrame } from './pictures.ts';
import { slow_ms, Workbench } from './workbench.ts';

/** The same files in a worker of the page: no Node, no disk. */
export async function testVscodeWeb(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(editors, 'web');
  try {
    await bench.openRig();
    await showMainJob(bench, step, 'vscode-web');

    await step('pictures beside the text', async () => {
      await bench.editor.locator('.view-line', { hasText: 'barrel' }).first().click({ position: { x: 20, y: 6 } });
      await bench.command('Linewright: Open the Pictures of This Rig');
      const frame = await picturesFrame(bench);
      await frame.locator('article[data-id="winch bow-winch drum"].current').waitFor({ timeout: slow_ms });
      await bench.screenshot('vscode-web-pictures');
    });

    await step('without Git, a message says why there is no last commit', async () => {
      await bench.editor.locator('.view-line', { hasText: 'barrel' }).first().click({ position: { x: 20, y: 6 } });
      await bench.command('Linewright: Compare the Sheet with the Last Commit');
      await bench.page.locator('.notification-list-item', { hasText: 'The last commit cannot be read' }).waitFor({ timeout: slow_ms });
    });
  } catch (error) {
    await bench.screenshot('vscode-web-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
