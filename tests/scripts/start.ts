// The main job, for somebody who has just come: build, check the example rigs, show the sheet of one.
import { root, runNode } from './run.ts';

const shown = 'examples/plover.rig';
const cli = 'dist/linewright.cjs';

const say = (text: string): void => console.log(`\n— ${text}\n`);

async function main(): Promise<number> {
  const built = await runNode(['esbuild.config.mjs']);
  if (built !== 0) return built;

  say('linewright check examples');
  // One of the rigs has a fault on purpose: 1 means that findings were printed, and only 2 that something could not be checked.
  const checked = await runNode([cli, 'check', 'examples']);
  if (1 < checked) return checked;

  say(`linewright sheet ${shown}`);
  const printed = await runNode([cli, 'sheet', shown]);
  if (printed !== 0) return printed;

  say('In VS Code');
  console.log(`  npm run package
  code --install-extension dist/linewright.vsix
  code examples

Open ${shown} there and hover over a number. Any other editor with a language client starts the same server with
  node ${root}${cli} serve --stdio`);
  return 0;
}

process.exitCode = await main();
