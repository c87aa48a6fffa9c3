import assert from 'node:assert/strict';
import { chromium } from 'playwright-core';
import { documentHtml } from '../../../src-core/papers/document-html.ts';
import { example, papersOf, plover } from '../../papers/papers-of.ts';
import type { Editors } from './prepare-editors.ts';
import type { Step } from './steps.ts';
import { browserFlags } from './workbench.ts';

/** What is taken to the line is one sheet, printed on both sides. */
const mostPages = 2;

/** The cards and briefs of the examples, printed by a real browser on the paper of either side of the ocean. */
export async function testPapers(editors: Editors, step: Step): Promise<void> {
  const papers = [...papersOf(plover()), ...papersOf({ 'ouzel.rig': example('ouzel.rig'), 'practice.rig': example('practice.rig') })].filter(([name]) => /^(?:card|brief) /.test(name));
  const browser = await chromium.launch({ executablePath: editors.chromium, args: browserFlags });
  try {
    const page = await browser.newPage();
    for (const format of ['A4', 'Letter']) {
      for (const [name, paper] of papers) {
        await step(`${name} on ${format}`, async () => {
          await page.setContent(documentHtml(paper));
          const pdf = await page.pdf({ format, preferCSSPageSize: true });
          const text = pdf.toString('latin1');
          const [, wide] = /\/MediaBox\s*\[0 0 ([\d.]+)/.exec(text) ?? [];
          assert.ok(Math.abs(Number(wide) - (format === 'A4' ? 595 : 612)) < 1, 'the paper in the printer is the one that is used');
          const pages = [...text.matchAll(/\/Type\s*\/Page\b/g)].length;
          assert.ok(0 < pages && pages <= mostPages, `it takes ${pages} pages`);
        });
      }
    }
  } finally {
    await browser.close();
  }
}
