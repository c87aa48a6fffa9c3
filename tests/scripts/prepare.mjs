// Builds dist/ when the package is installed from its repository. Plain JavaScript for whatever Node is there.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

function run(program, words, env) {
  const { status, error } = spawnSync(program, words, { cwd: root, stdio: 'inherit', env, shell: process.platform === 'win32' && program === 'npm' });
  if (status !== 0) throw error ?? new Error(`${program} ${words.join(' ')} ended with ${status}`);
}

// A global installation from git hands "global" on to the installation of what building takes, which then goes elsewhere.
if (!existsSync(join(root, 'node_modules', 'esbuild'))) {
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_config_(?:global|location)$/i.test(name)));
  run('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--include=dev', '--include=optional'], env);
}
run(process.execPath, ['esbuild.config.mjs', '--minify'], process.env);
