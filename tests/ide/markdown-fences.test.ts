import { expect, test } from 'vitest';
import fc from 'fast-check';
import { fencePreviews } from '../../src-core/ide/fence-preview.ts';
import { isMarkdownPath, mayHoldRig, rigFences, rigTextOf, textInFence } from '../../src-core/ide/markdown-fences.ts';
import { Project } from '../../src-core/project.ts';
import { day, line } from './cursor.ts';

const contents = (markdown: string): string[] => rigFences(markdown).map(({ content }) => markdown.slice(content.start, content.end));

test.each([
  ['```rig\na\n```\n', ['a\n']],
  ['~~~ rig title="x"\na\n~~~\n', ['a\n']],
  ['```` Rig\n```\na\n````\n', ['```\na\n']],
  ['```rigging\na\n```\n', []],
  ['```text\n```rig\na\n```\n', []],
  ['````markdown\n```rig\na\n```\n````\n', []],
  ['    ```rig\n    a\n', []],
  ['- item\n\n  ```rig\n  a\n  ```\n', ['  a\n']],
  ['1. ```rig\n   a\n   ```\n', ['   a\n']],
  ['> ```rig\n> a\n> ```\n', ['> a\n']],
  ['> ```rig\n> a\nafter\n', ['> a\n']],
  ['```rig\nnever closed', ['never closed']],
  ['```rig\r\na\r\n```\r\ntext\r\n\r\n```rig\r\nb\r\n```', ['a\r\n', 'b\r\n']],
  ['```rig `x`\na\n', []],
  ['', []],
])('the rig fences of %j', (markdown, wanted) => {
  expect(contents(markdown)).toEqual(wanted);
});

test('the rig of a document has every letter where the document has it, and nothing else', () => {
  const markdown = '# Build é 🛻\n\n> ```rig\n> strap s {\n> }\n> ```\n\ntext\n';
  expect(rigTextOf(markdown)).toBe(`${' '.repeat(12)}\n\n\f${' '.repeat(7)}\n  strap s {\n  }\n${' '.repeat(5)}\n\n    \n`);
});

const pieces = fc.constantFrom('```rig\n', '```\n', '~~~rig\r\n', '~~~\n', '> ', '- ', '  ', 'text {', '}\n', '\r', '\n', '"', '🛻', 'line main {\n');
test('whatever the document, the rig is as long, has the same line breaks, and only letters of it', () => {
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 40 }), (parts) => {
      const markdown = parts.join('');
      const rig = rigTextOf(markdown);
      expect(rig.length).toBe(markdown.length);
      const openings = rigFences(markdown).map((fence) => fence.opening);
      for (let i = 0; i < rig.length; i++) if (rig[i] !== markdown[i]) expect(rig[i]).toBe(openings.includes(i) ? '\f' : ' ');
      expect(rig.replace(/[^\r\n]/g, '')).toBe(markdown.replace(/[^\r\n]/g, ''));
      let at = 0;
      for (const { content } of rigFences(markdown)) {
        expect(at).toBeLessThanOrEqual(content.start);
        expect(content.start).toBeLessThanOrEqual(content.end);
        at = content.end;
        expect(mayHoldRig(markdown)).toBe(true);
      }
    }),
  );
});

test.each([['in column 0', ''], ['in a list', '   ']])('a brace that is forgotten in one fence leaves the next one alone, %s', (_, indent) => {
  const lines = ['- a', '```rig', 'strap one {', '  wll 4 t', '```', 'prose', '```rig', 'strap two {', '  wlll 5 t', '}', '```'];
  const markdown = `${lines.map((text, i) => (i === 0 ? text : indent + text)).join('\n')}\n`;
  const project = new Project();
  project.set('build.md', rigTextOf(markdown));
  const file = project.file('build.md')!;
  expect(file.bound.flatMap(({ blocks }) => blocks.map(({ name }) => name))).toEqual(['one', 'two']);
  expect(project.findings('build.md', day).filter(({ severity }) => severity === 'error').map(({ code, place }) => [code, file.lines.lineColumn(file.spanOf(place)!.start).line])).toEqual([
    ['unclosed-brace', 2],
    ['unknown-statement', 8],
  ]);
});

test('text written into a fence begins as its lines do', () => {
  const [quoted] = rigFences('> ```rig\n> a {\n> }\n> ```\n');
  expect(textInFence('\n\nb\n', quoted!, false)).toBe('\n>\n> b\n');
  expect(textInFence('  # note\n', quoted!, true)).toBe('> # note\n');
  expect(textInFence('\nb', rigFences('```rig\n```\n')[0]!, false)).toBe('\nb');
});

test('which files are documents', () => {
  expect(['a.md', 'b/README.MD', 'c.markdown', 'd.rig', 'md'].filter(isMarkdownPath)).toEqual(['a.md', 'b/README.MD', 'c.markdown']);
});

test('under a fence stand what was checked, what was found and the picture, and nothing that runs', () => {
  const markdown = `# Build\n\n\`\`\`rig\n${line.replace('bury 72 d', 'bury 46 d')}}\n\`\`\`\n\nOnly a note:\n\n\`\`\`rig\n# nothing here\n\`\`\`\n\n\`\`\`rig\nvehicle v "<script>alert(1)</script>" {\n  mass  2,650 <b>\n}\n\`\`\`\n`;
  const project = new Project();
  project.set('build.md', rigTextOf(markdown));
  const [first, second, third] = fencePreviews(project, 'build.md', rigFences(markdown), day);
  expect(first).toMatch(/^<div class="linewright"><p class="linewright-verdict">\d+ checks made, /);
  expect(first).toContain('<li class="linewright-error"><b>error</b> bury of <code>main</code> outboard eye is 46 d, below the 72 d');
  expect(first).toContain('<figure><svg ');
  expect(second).toBe('');
  expect(third).not.toContain('<script');
  expect(third).not.toContain('<b>}');
  for (const html of [first, third]) expect(html).not.toMatch(/<script|javascript:|href=|src=|\son\w+=/);
});
