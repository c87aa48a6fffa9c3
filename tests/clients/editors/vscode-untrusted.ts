import { showMainJob } from './main-job.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { slow_ms, Workbench } from './workbench.ts';

/** The packed extension in a folder that nobody has said is trusted: it reads text and runs nothing, so all of it works there. */
export async function testVscodeUntrusted(editors: Editors, step: Step): Promise<void> {
  const restricted = { 'security.workspace.trust.enabled': true, 'security.workspace.trust.startupPrompt': 'never', 'security.workspace.trust.banner': 'never', 'security.workspace.trust.emptyWindow': false };
  const bench = await Workbench.start(editors, 'node', undefined, restricted);
  try {
    await bench.openRig();
    await step('the window is in Restricted Mode', async () => {
      await bench.page.locator('.statusbar-item', { hasText: 'Restricted Mode' }).first().waitFor({ timeout: slow_ms });
    });
    await showMainJob(bench, step, 'vscode-untrusted');
  } finally {
    await bench.close();
  }
}
