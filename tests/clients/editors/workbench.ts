import { spawn, type ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { cp, mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { chromium, type Locator, type Page } from 'playwright-core';
import { expected } from '../expected.ts';
import type { Editors } from './prepare-editors.ts';
import { serveFolder } from './serve-folder.ts';

export const repository = fileURLToPath(new URL('../../../', import.meta.url));

/** A quiet editor: nothing that looks for updates, greets, suggests or moves the layout while a test points at it. */
export const settings = {
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.welcomePage.walkthroughs.openOnInstall': false,
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'window.commandCenter': false,
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'security.workspace.trust.enabled': false,
  'chat.disableAIFeatures': true,
  'git.enabled': false,
  'remote.autoForwardPorts': false,
  'editor.hover.delay': 100,
  'editor.minimap.enabled': false,
  'editor.accessibilitySupport': 'off',
  'files.autoSave': 'off',
  'linewright.check.asOf': expected.asOf,
};

export const browserFlags = [
  '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync',
];

/** A cold machine that is busy with something else shows its first squiggle after half a minute. */
export const slow_ms = 90_000;

export const freePort = (): Promise<number> =>
  new Promise((done) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      probe.close(() => done(port));
    });
  });

interface Home {
  readonly folder: string;
  readonly workspace: string;
  readonly extensions: string;
  readonly words: readonly string[];
  readonly env: NodeJS.ProcessEnv;
}

/** A home folder of the test's own, so that it meets neither a person's settings nor the last run's. */
async function makeHome(editors: Editors, more: Readonly<Record<string, unknown>>): Promise<Home> {
  const folder = await mkdtemp(join(tmpdir(), 'linewright-vscode-'));
  const workspace = join(folder, 'examples');
  await cp(join(repository, 'examples'), workspace, { recursive: true });
  await mkdir(join(folder, 'data', 'User'), { recursive: true });
  await writeFile(join(folder, 'data', 'User', 'settings.json'), JSON.stringify({ ...settings, ...more }));
  await writeFile(join(folder, 'config.yaml'), 'auth: none\n');
  const extensions = join(folder, 'extensions');
  return {
    folder,
    workspace,
    extensions,
    words: [editors.codeServer, '--config', join(folder, 'config.yaml'), '--user-data-dir', join(folder, 'data')],
    env: { ...process.env, EXTENSIONS_GALLERY: '{}', HOME: folder, XDG_DATA_HOME: folder, XDG_CONFIG_HOME: folder },
  };
}

/** Installs the packed extension and answers with the folder it was unpacked to. */
async function install(home: Home): Promise<string> {
  const vsix = join(repository, 'dist', 'linewright.vsix');
  const child = spawn(process.execPath, [...home.words, '--extensions-dir', home.extensions, '--install-extension', vsix], { env: home.env, stdio: ['ignore', 'pipe', 'pipe'] });
  const output = collect(child);
  const code = await new Promise((done) => child.on('exit', done));
  if (code !== 0) throw new Error(`the extension was not installed\n${output()}`);
  const folder = (await readdir(home.extensions)).find((name) => name.startsWith('linewright.'));
  if (folder === undefined) throw new Error(`the extension is not where it was installed\n${output()}`);
  return join(home.extensions, folder);
}

function collect(child: ChildProcess): () => string {
  let text = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (data) => (text += String(data)));
  return () => text.split('\n').slice(-30).join('\n');
}

/** code-server forks the editor's server and the extension host: the whole group that we started must end. */
async function endGroup(child: ChildProcess): Promise<void> {
  const gone = new Promise((done) => child.on('exit', done));
  for (const signal of ['SIGTERM', 'SIGKILL'] as const) {
    try {
      process.kill(-child.pid!, signal);
    } catch {
      return;
    }
    await Promise.race([gone, pause(4000, undefined, { ref: false })]);
  }
}

interface Started {
  readonly page: Page;
  /** Where the extension was unpacked, for tests that break it. */
  readonly extension: string;
  readonly workspace: string;
  readonly storage: string;
  readonly url: string;
  readonly log: () => string;
  readonly close: () => Promise<void>;
}

/** `host` says where the extension runs: in Node beside the editor's server, or in a worker of the page. */
export type Host = 'node' | 'web';

/** Called with the folders of the installed extension and of the workspace, before the editor starts. */
export type Prepare = (extension: string, workspace: string) => Promise<void>;

async function start(editors: Editors, host: Host, prepare: Prepare, more: Readonly<Record<string, unknown>>): Promise<Started> {
  const home = await makeHome(editors, more);
  const undo: (() => unknown)[] = [() => rm(home.folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })];
  const close = async (): Promise<void> => {
    for (const step of undo.splice(0).reverse()) await step();
  };
  try {
    const extension = await install(home);
    await prepare(extension, home.workspace);
    const port = await freePort();
    // For the web host the editor must not find the installed copy, which it would start in Node.
    const extensions = host === 'node' ? home.extensions : join(home.folder, 'none');
    const server = spawn(
      process.execPath,
      [...home.words, '--extensions-dir', extensions, '--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry', '--disable-update-check', ...(more['security.workspace.trust.enabled'] === true ? [] : ['--disable-workspace-trust']), '--disable-getting-started-override', home.workspace],
      { env: home.env, stdio: ['ignore', 'pipe', 'pipe'], detached: true },
    );
    undo.push(() => endGroup(server));
    const log = collect(server);
    const origin = `http://127.0.0.1:${port}`;
    for (let tries = 0; !(await fetch(`${origin}/healthz`).then((answer) => answer.ok, () => false)); tries++) {
      if (300 < tries) throw new Error(`code-server did not start\n${log()}`);
      await pause(100);
    }
    const browser = await chromium.launch({ executablePath: editors.chromium, args: browserFlags });
    undo.push(() => browser.close());
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    if (host === 'web') {
      const files = await serveFolder(extension);
      undo.push(files.close);
      await addWebExtension(page, port, files.port);
    }
    const file = `vscode-remote://127.0.0.1:${port}${join(home.workspace, expected.rig)}`;
    const url = `${origin}/?folder=${encodeURIComponent(home.workspace)}&payload=${encodeURIComponent(JSON.stringify([['openFile', file]]))}`;
    return { page, extension, workspace: home.workspace, storage: join(home.folder, 'data', 'User', 'globalStorage', 'linewright.linewright'), url, log, close };
  } catch (error) {
    await close();
    throw error;
  }
}

/**
 * The row of a finding in the problem list, which must be open. Only the rows in view are drawn, so the filter brings it up; a list that
 * was filtered before the finding came may keep it hidden, so it is filtered again.
 */
export async function problemRow(page: Page, code: string, message: string | RegExp): Promise<Locator> {
  const filter = page.locator('.viewpane-filter input').first();
  const row = page.locator('.markers-panel .monaco-list-row', { hasText: message }).first();
  for (const end = Date.now() + slow_ms; ; ) {
    await filter.fill('');
    await filter.fill(code);
    try {
      await row.waitFor({ timeout: 4000 });
      return row;
    } catch (error) {
      if (end < Date.now()) throw error;
    }
  }
}

export class Workbench {
  private readonly started: Started;

  private constructor(started: Started) {
    this.started = started;
  }

  static async start(editors: Editors, host: Host, prepare: Prepare = async () => undefined, more: Readonly<Record<string, unknown>> = {}): Promise<Workbench> {
    return new Workbench(await start(editors, host, prepare, more));
  }

  get page(): Page {
    return this.started.page;
  }

  get extension(): string {
    return this.started.extension;
  }

  get workspace(): string {
    return this.started.workspace;
  }

  /** The folder that the editor gives the extension to keep things in. */
  get storage(): string {
    return this.started.storage;
  }

  /** Opens the workspace with one of its files in the editor. */
  async openFile(name: string): Promise<void> {
    await this.page.goto(this.started.url.replace(encodeURIComponent(`/${expected.rig}`), encodeURIComponent(`/${name}`)));
    await this.page.locator('.tab.active', { hasText: name }).waitFor({ timeout: slow_ms });
    await this.editor.locator('.view-line').first().waitFor({ timeout: slow_ms });
  }

  /** Loads the window again, without telling it what to open: it opens what it had. */
  async reload(): Promise<void> {
    await this.page.goto(this.started.url.replace(/&payload=.*/, ''));
    await this.page.locator('.monaco-workbench').waitFor({ timeout: slow_ms });
  }

  async openRig(): Promise<void> {
    await this.page.goto(this.started.url);
    await this.page.locator('.monaco-workbench').waitFor({ timeout: slow_ms });
    await this.editor.locator('.view-line', { hasText: 'vehicle' }).first().waitFor({ timeout: slow_ms });
  }

  get editor(): Locator {
    return this.page.locator('.editor-instance .monaco-editor').first();
  }

  /** One coloured piece of the text in the editor. */
  piece(text: RegExp): Locator {
    return this.editor.locator('.view-line span span', { hasText: text }).first();
  }

  colourOf(text: RegExp): Promise<string> {
    return this.piece(text).evaluate((node) => (globalThis as unknown as { getComputedStyle(n: unknown): { color: string } }).getComputedStyle(node).color);
  }

  /** Runs a command by its title; a key pressed while the layout still moves gets lost, so it is pressed again. */
  async command(title: string): Promise<void> {
    const row = this.page.locator('.quick-input-widget .monaco-list-row', { hasText: title }).first();
    for (let tries = 1; ; tries++) {
      await this.page.keyboard.press('F1');
      try {
        await this.page.locator('.quick-input-widget:visible').waitFor({ timeout: 4000 });
        await this.page.keyboard.type(title);
        await row.waitFor({ timeout: 6000 });
        await this.page.keyboard.press('Enter');
        return;
      } catch (error) {
        if (5 < tries) throw error;
        await this.page.keyboard.press('Escape');
      }
    }
  }

  async screenshot(name: string): Promise<void> {
    const folder = join(repository, 'dist', 'screenshots');
    await mkdir(folder, { recursive: true });
    await this.page.screenshot({ path: join(folder, `${name}.png`) });
  }

  /** What the editor's server wrote last: for a test that failed. */
  get serverLog(): string {
    return this.started.log();
  }

  close(): Promise<void> {
    return this.started.close();
  }
}

/**
 * An extension for the web host comes to the workbench as a location in the configuration that the page carries. It is put there when
 * the page has been read and its scripts have not run yet. The page may load from its own origin only, so the files come through
 * code-server's proxy for local ports.
 */
async function addWebExtension(page: Page, port: number, files: number): Promise<void> {
  const location = { scheme: 'http', authority: `127.0.0.1:${port}`, path: `/proxy/${files}/extension` };
  await page.addInitScript(`
    document.addEventListener('readystatechange', () => {
      const meta = document.getElementById('vscode-workbench-web-configuration');
      if (document.readyState !== 'interactive' || meta === null) return;
      const configuration = JSON.parse(meta.dataset.settings);
      configuration.developmentOptions = { ...configuration.developmentOptions, extensions: [${JSON.stringify(location)}] };
      meta.dataset.settings = JSON.stringify(configuration);
    });`);
}
