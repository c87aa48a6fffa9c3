import { showMainJob } from './main-job.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { Workbench } from './workbench.ts';

/** The same files in a worker of the page: no Node, no disk. */
export async function testVscodeWeb(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(editors, 'web');
  try {
    await bench.openRig();
    await showMainJob(bench, step, 'vscode-web');
  } catch (error) {
    await bench.screenshot('vscode-web-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}
