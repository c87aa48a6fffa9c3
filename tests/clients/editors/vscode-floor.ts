import assert from 'node:assert/strict';
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { expected } from '../expected.ts';
import { showMainJob } from './main-job.ts';
import { floorCommit, floorVersion, prepareFloor, type Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { browserFlags, freePort, repository, settings, slow_ms } from './workbench.ts';

interface TestWeb {
  open(options: Readonly<Record<string, unknown>>): Promise<{ dispose(): void }>;
}

/** The oldest VS Code that the extension says it runs in, in a browser, on a folder that is on no disk. */
export async function testVscodeFloor(editors: Editors, step: Step): Promise<void> {
  const floor = await prepareFloor();
  const folder = await mkdtemp(join(tmpdir(), 'linewright-floor-'));
  const undo: (() => unknown)[] = [() => rm(folder, { recursive: true, force: true })];
  try {
    const workspace = join(folder, 'examples');
    await cp(join(repository, 'examples'), workspace, { recursive: true });
    await mkdir(join(workspace, '.vscode'));
    await writeFile(join(workspace, '.vscode', 'settings.json'), JSON.stringify(settings));
    const port = await freePort();
    const { open } = createRequire(join(floor.folder, 'package.json'))('@vscode/test-web') as TestWeb;
    const server = await open({
      browserType: 'none', quality: 'stable', commit: floorCommit, esm: false, host: '127.0.0.1', port,
      testRunnerDataDir: floor.data, extensionDevelopmentPath: join(repository, 'dist', 'extension'), folderPath: workspace,
    });
    undo.push(() => server.dispose());
    const browser = await chromium.launch({ executablePath: editors.chromium, args: browserFlags });
    undo.push(() => browser.close());
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    const screenshot = async (name: string): Promise<void> => {
      await mkdir(join(repository, 'dist', 'screenshots'), { recursive: true });
      await page.screenshot({ path: join(repository, 'dist', 'screenshots', `${name}.png`) });
    };
    try {
      await page.goto(`http://127.0.0.1:${port}/`);
      await page.locator('.explorer-folders-view .monaco-list-row', { hasText: expected.rig }).first().dblclick({ timeout: slow_ms });
      const editor = page.locator('.editor-instance .monaco-editor').first();

      await step(`this is VS Code ${floorVersion}, as old as the manifest allows`, async () => {
        const manifest = JSON.parse(await readFile(join(repository, 'package.json'), 'utf8')) as { engines: { vscode: string } };
        assert.equal(`^${floorVersion.replace(/\.\d+$/, '.0')}`, manifest.engines.vscode);
        await editor.locator('.view-line', { hasText: 'vehicle' }).first().waitFor({ timeout: slow_ms });
      });

      await showMainJob({ page, editor, screenshot }, step, 'vscode-floor');
    } catch (error) {
      await screenshot('vscode-floor-failure').catch(() => undefined);
      throw error;
    }
  } finally {
    for (const last of undo.reverse()) await last();
  }
}
