import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import type { Frame, Page } from 'playwright-core';
import { expected } from '../expected.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { repository, slow_ms, Workbench } from './workbench.ts';

/** The page of the pictures, which lies two frames deep. */
export async function picturesFrame({ page }: { readonly page: Page }): Promise<Frame> {
  for (const end = Date.now() + slow_ms; Date.now() < end; await pause(200)) {
    for (const frame of page.frames()) {
      if ((await frame.locator('main[aria-label^="Pictures"] article').count().catch(() => 0)) > 0) return frame;
    }
  }
  throw new Error(`no frame shows pictures: ${page.frames().map((f) => f.url()).join(' ')}`);
}

async function until(says: string, holds: () => Promise<boolean>): Promise<void> {
  for (const end = Date.now() + slow_ms; !(await holds()); await pause(100)) assert.ok(Date.now() < end, says);
}

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** What the checker finds against WCAG 2.2 AA and good practice, in words. */
async function axeFindings(frame: Frame): Promise<string[]> {
  await frame.evaluate(axe);
  const violations = await frame.evaluate(async () => {
    const { violations: found } = await (globalThis as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe.run();
    return found;
  });
  return violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.html.slice(0, 160)} ${n.failureSummary ?? ''}`));
}

const git = (folder: string, ...words: string[]): void => void execFileSync('git', ['-c', 'user.name=crew', '-c', 'user.email=crew@example.com', '-c', 'commit.gpgsign=false', ...words], { cwd: folder, stdio: 'ignore' });

/** The preview beside the text, driven by pointer and keys, and the comparison with the last commit. */
export async function testPictures(editors: Editors, step: Step): Promise<void> {
  const bench = await Workbench.start(
    editors,
    'node',
    async (_extension, workspace) => {
      git(workspace, 'init', '-q');
      git(workspace, 'add', '.');
      git(workspace, 'commit', '-q', '-m', 'as bought');
    },
    { 'git.enabled': true, 'git.openRepositoryInParentFolders': 'never', 'window.autoDetectColorScheme': true, 'window.autoDetectHighContrast': true },
  );
  const { page, editor } = bench;
  const lineWith = (words: string | RegExp) => editor.locator('.view-line', { hasText: words }).first();
  const place = (): Promise<string> => page.locator('#status\\.editor\\.selection').innerText();
  try {
    await bench.openRig();
    const blank = 'Linewright: Open the Pictures of This Rig';
    let frame!: Frame;
    const current = (id: string) => frame.locator(`article.current[data-id="${id}"]`);

    await step('pictures beside the text', async () => {
      await lineWith(/carries/).click();
      await bench.command(blank);
      frame = await picturesFrame(bench);
      await current('winch bow-winch drum').waitFor({ timeout: slow_ms });
      assert.ok((await frame.locator('article').count()) >= 8);
      await bench.screenshot('pictures');
    });

    await step('follow the cursor in the text', async () => {
      await lineWith(/^vehicle/).click();
      await page.keyboard.press('Control+End');
      await page.keyboard.press('Control+Home');
      await lineWith(/^\s*outboard/).click();
      await current('line main splice main outboard').waitFor({ timeout: slow_ms });
      await until('the picture of the splice is in view', () => current('line main splice main outboard').evaluate((node) => {
        const { top, bottom } = node.getBoundingClientRect();
        return bottom > 40 && top < (node.ownerDocument.documentElement.clientHeight);
      }));
    });

    await step('lead back to the text, by a click and by Enter', async () => {
      await frame.locator('article[data-id="winch bow-winch drum"] .figure').click();
      const winch = await lineNumber(bench, /^winch bow-winch/);
      await until(`the cursor stands at line ${winch}`, async () => (await place()).startsWith(`Ln ${winch},`));
      // The editor takes the focus a little after the cursor stands there, and hears a little late of one that a script gives.
      await until('the picture has the focus', async () => {
        await frame.locator('article[data-id="line main map"] .figure').focus();
        return (await page.locator('#status\\.editor\\.selection').count()) === 0;
      });
      await page.keyboard.press('Enter');
      const line = await lineNumber(bench, /^line main/);
      await until(`the cursor stands at line ${line}`, async () => (await place()).startsWith(`Ln ${line},`));
    });

    await step('zoom and move by keys', async () => {
      const main = frame.locator('main');
      await main.focus();
      const width = (): Promise<number> => frame.locator('.figure .lw').first().evaluate((node) => node.getBoundingClientRect().width);
      const fitted = await width();
      for (let i = 0; i < 4; i++) await page.keyboard.press('+');
      assert.ok((await width()) > fitted * 1.5, 'plus makes it larger');
      assert.match(await frame.locator('#zoom').innerText(), /^\d+ %$/);
      for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
      await until('the arrow moves the view', () => main.evaluate((node) => node.scrollLeft > 0));
      await bench.screenshot('pictures-zoomed');
      await page.keyboard.press('0');
      assert.ok(Math.abs((await width()) - fitted) < 2, '0 fits the width again');
    });

    await step('the pointer moves what lies under it', async () => {
      const main = frame.locator('main');
      await main.evaluate((node) => node.scrollTo(0, 300));
      const box = (await page.locator('iframe.webview.ready').first().boundingBox())!;
      await page.mouse.move(box.x + 200, box.y + 400);
      await page.mouse.down();
      await page.mouse.move(box.x + 200, box.y + 300, { steps: 5 });
      await page.mouse.up();
      await until('the view moved by as much', () => main.evaluate((node) => Math.abs(node.scrollTop - 400) < 3));
      // A click would have marked the picture under the pointer.
      assert.equal(await frame.locator('article.current').getAttribute('data-id'), 'line main map', 'a move is no click');
    });

    await step('motion is left out for whom it disturbs', async () => {
      const asked = (): Promise<unknown> => frame.evaluate(() => (globalThis as unknown as { asked?: unknown }).asked);
      await frame.evaluate(`{
        const plain = Element.prototype.scrollIntoView;
        Element.prototype.scrollIntoView = function (given) {
          globalThis.asked = given.behavior;
          plain.call(this, given);
        };
      }`);
      await lineWith(/^\s*strands/).click();
      await lineWith(/^\s*flange/).click();
      await until('the picture is brought in view', async () => (await asked()) === 'smooth');
      await page.emulateMedia({ reducedMotion: 'reduce' });
      await lineWith(/^\s*strands/).click();
      await until('at once', async () => (await asked()) === 'instant');
      await page.emulateMedia({ reducedMotion: null });
    });

    await step('broken text keeps the last good pictures, greyed, with the fault on top', async () => {
      await lineWith(/^\s*flange/).click();
      await page.keyboard.press('End');
      const good = await frame.locator('article[data-id="winch bow-winch drum"] .figure').innerHTML();
      await page.keyboard.type('x');
      await frame.locator('article.old[data-id="winch bow-winch drum"]').waitFor({ timeout: slow_ms });
      assert.equal(await frame.locator('article[data-id="winch bow-winch drum"] .figure').innerHTML(), good);
      assert.match(await frame.locator('#notices').innerText(), /^line \d+: .*mmx/);
      assert.equal(await frame.locator('article.old[data-id="line main map"]').count(), 0, 'what can be read is drawn anew');
      assert.deepEqual(await axeFindings(frame), []);
      await bench.screenshot('pictures-broken');
      await page.keyboard.press('Backspace');
      await frame.locator('article[data-id="winch bow-winch drum"]:not(.old)').waitFor({ timeout: slow_ms });
      assert.equal(await frame.locator('#notices').innerText(), '');
    });

    await step('an open brace hides no picture', async () => {
      const before = await frame.locator('article').count();
      await lineWith(/^\s*flange/).click();
      await page.keyboard.press('Control+Home');
      await page.keyboard.type('line {\n');
      await until('something is old', async () => (await frame.locator('#notices').innerText()) !== '');
      assert.ok((await frame.locator('article').count()) >= before);
      for (const key of ['Control+Home', 'Shift+End', 'Delete', 'Delete']) await page.keyboard.press(key);
      await until('all is drawn anew', async () => (await frame.locator('#notices').innerText()) === '' && (await frame.locator('article.old').count()) === 0);
    });

    // The editor takes its theme from what the reader has asked of the whole screen.
    for (const [kind, colorScheme, forcedColors] of [['vscode-dark', 'dark', 'none'], ['vscode-high-contrast', 'dark', 'active'], ['vscode-high-contrast-light', 'light', 'active'], ['vscode-light', 'light', 'none']] as const) {
      await step(`axe finds nothing, ${kind}`, async () => {
        await page.emulateMedia({ colorScheme, forcedColors });
        await until('the theme is there', async () => (await frame.locator('body').getAttribute('data-vscode-theme-kind')) === kind);
        await frame.evaluate('for (const details of document.querySelectorAll("details")) details.open = true');
        assert.deepEqual(await axeFindings(frame), []);
        await frame.locator('main').evaluate((node) => node.scrollTo(0, 0));
        await bench.screenshot(`pictures-${kind.replace('vscode-', '')}`);
      });
    }

    await step('each picture has its table', async () => {
      const rows = await frame.locator('article[data-id="winch bow-winch drum"] tbody tr').count();
      assert.ok(rows > 3);
      assert.equal(await frame.locator('article').count(), await frame.locator('article table caption').count());
    });

    await step('nothing runs or is loaded that the page does not bring', async () => {
      const answer = await frame.evaluate<{ refused: string[]; ran: boolean; fetched: boolean }>(`(async () => {
        const refused = [];
        document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) => refused.push(effectiveDirective));
        const script = document.createElement('script');
        script.textContent = 'globalThis.ran = true';
        document.body.append(script);
        script.remove();
        const image = new Image();
        await new Promise((done) => {
          image.onerror = image.onload = done;
          image.src = location.origin + '/favicon.ico';
        });
        const fetched = await fetch(location.href).then(() => true, () => false);
        await new Promise((done) => setTimeout(done));
        return { refused, ran: 'ran' in globalThis, fetched };
      })()`);
      assert.deepEqual({ ...answer, refused: [...new Set(answer.refused)].sort() }, { refused: ['connect-src', 'img-src', 'script-src-elem'], ran: false, fetched: false });
    });

    await step('saved as SVG and PNG', async () => {
      for (const [button, extension] of [['Save as SVG', 'svg'], ['Save as PNG', 'png']] as const) {
        await frame.locator('article[data-id="winch bow-winch drum"]').getByRole('button', { name: button }).click();
        const path = page.locator('.quick-input-widget:visible input').first();
        await path.waitFor({ timeout: slow_ms });
        await until('the dialog names the file', async () => (await path.inputValue()).endsWith(`plover-winch-bow-winch-drum.${extension}`));
        await page.keyboard.press('Enter');
        const file = join(bench.workspace, `plover-winch-bow-winch-drum.${extension}`);
        await until(`${file} is written`, async () => existsSync(file) && (await readFile(file)).length > 0);
        const bytes = await readFile(file);
        if (extension === 'svg') assert.match(bytes.toString('utf8'), /^<\?xml [^>]*\?>\n<svg [\s\S]*<\/svg>\n$/);
        else {
          assert.equal(bytes.subarray(1, 4).toString('latin1'), 'PNG');
          assert.equal(bytes.readUInt32BE(16), 2 * 760);
          await writeFile(join(repository, 'dist', 'screenshots', 'saved.png'), bytes);
        }
      }
    });

    await step('state survives a reload', async () => {
      await frame.locator('#zoom-in').click();
      const zoom = await frame.locator('#zoom').innerText();
      await until('the editor has kept the zoom', () => page.evaluate<boolean>(keptZoom));
      await bench.reload();
      frame = await picturesFrame(bench);
      assert.equal(await frame.locator('#zoom').innerText(), zoom);
      assert.match(await frame.locator('#name').innerText(), new RegExp(expected.rig.replace('.', '\\.')));
    });

    await step('sheet against the last commit, side by side', async () => {
      // A narrow editor draws the two sides as one.
      await page.locator('.tab', { hasText: 'Pictures of' }).click({ button: 'middle' });
      await lineWith(/^\s*flange/).click();
      await page.keyboard.press('Home');
      await page.keyboard.type('# allow: ');
      await bench.command('Linewright: Compare the Sheet with the Last Commit');
      const diff = page.locator('.diff-editor, .monaco-diff-editor').first();
      await diff.waitFor({ timeout: slow_ms });
      await page.locator('.tab.active', { hasText: 'last commit' }).waitFor({ timeout: slow_ms });
      await diff.locator('.editor.original .view-line', { hasText: /flange\sdiameter.*165/ }).first().waitFor({ timeout: slow_ms });
      await diff.locator('.editor.modified .view-line', { hasText: /flange\sdiameter.*not/ }).first().waitFor({ timeout: slow_ms });
      await bench.screenshot('compare');
    });
  } catch (error) {
    await bench.screenshot('pictures-failure').catch(() => undefined);
    console.log(bench.serverLog);
    throw error;
  } finally {
    await bench.close();
  }
}

/** The editor writes what it keeps into the browser's database, some seconds after it changed. */
const keptZoom = `(async () => {
  for (const { name } of await indexedDB.databases()) {
    const database = await new Promise((done) => (indexedDB.open(name).onsuccess = ({ target }) => done(target.result)));
    try {
      for (const store of database.objectStoreNames) {
        const values = await new Promise((done) => (database.transaction(store).objectStore(store).getAll().onsuccess = ({ target }) => done(target.result)));
        if (values.some((value) => typeof value === 'string' && /linewright\\.pictures[^]*zoom[\\\\":]+\\d/.test(value))) return true;
      }
    } finally {
      database.close();
    }
  }
  return false;
})()`;

/** Counted in the file, since an editor draws only the lines in view. */
async function lineNumber(bench: Workbench, words: RegExp): Promise<number> {
  const lines = (await readFile(join(bench.workspace, expected.rig), 'utf8')).split('\n');
  return lines.findIndex((line) => words.test(line)) + 1;
}
