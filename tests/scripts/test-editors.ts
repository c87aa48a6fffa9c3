// The heavy second stage: the packed extension in real VS Code, and the server in Neovim. Installs the editors where they are missing.
//   node tests/scripts/test-editors.ts [colours] [vscode] [pictures] [markdown] [crash] [vscode-untrusted] [vscode-web] [vscode-floor] [neovim] [papers]
import { testColours } from '../clients/editors/colours.ts';
import { testCrash } from '../clients/editors/crash.ts';
import { testMarkdown } from '../clients/editors/markdown.ts';
import { testNeovim } from '../clients/editors/neovim.ts';
import { testPapers } from '../clients/editors/papers.ts';
import { testPictures } from '../clients/editors/pictures.ts';
import { prepareEditors } from '../clients/editors/prepare-editors.ts';
import { Steps } from '../clients/editors/steps.ts';
import { testVscode } from '../clients/editors/vscode.ts';
import { testVscodeFloor } from '../clients/editors/vscode-floor.ts';
import { testVscodeUntrusted } from '../clients/editors/vscode-untrusted.ts';
import { testVscodeWeb } from '../clients/editors/vscode-web.ts';
import { runNode } from './run.ts';

const clients = { colours: testColours, vscode: testVscode, pictures: testPictures, markdown: testMarkdown, crash: testCrash, 'vscode-untrusted': testVscodeUntrusted, 'vscode-web': testVscodeWeb, 'vscode-floor': testVscodeFloor, neovim: testNeovim, papers: testPapers };

const packed = await runNode(['tests/scripts/package.ts']);
if (packed !== 0) process.exit(packed);

const wanted = process.argv.slice(2);
const steps = new Steps();
const editors = await prepareEditors();
for (const [name, test] of Object.entries(clients)) {
  if (wanted.length === 0 || wanted.includes(name)) await steps.client(name, (step) => test(editors, step));
}
console.log(`\n${steps.passed} passed, ${steps.failed} failed`);
// A browser that hangs must not keep a finished run alive.
process.exit(steps.failed === 0 ? 0 : 1);
