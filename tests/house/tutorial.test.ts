import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { world } from '../cli/world.ts';
import { findingsIn } from '../support/judge-text.ts';

// `npx vitest run tests/house/tutorial.test.ts -u` writes the answers anew; what each step is to find is stated beside it and is not rewritten.
const path = join(import.meta.dirname, '../../docs/tutorial.md');
const tutorial = readFileSync(path, 'utf8');
const day = '2026-06-22';

interface Step {
  readonly heading: string;
  readonly found: string;
  readonly remove: readonly string[];
  readonly rig: string;
}

const headOf = (block: string): string => block.split(/\s+/, 2).join(' ');
const blocksOf = (rig: string): string[] => rig.trimEnd().split(/\n\n(?=\S)/);

/** The file after some steps: a block that is written again takes the place of the old one. */
function fileAfter(steps: readonly Step[]): string {
  const file = new Map<string, string>();
  for (const step of steps) {
    for (const head of step.remove) {
      if (!file.delete(head)) throw new Error(`there is no ${head} to remove`);
    }
    for (const block of blocksOf(step.rig)) file.set(headOf(block), block);
  }
  return [...file.values()].join('\n\n') + '\n';
}

const pattern = /^## (?<heading>.+)$|^<!-- remove: (?<remove>.+) -->$|^<!-- found: (?<found>.+) -->$|^```(?<sort>rig|text)\n(?<body>[\s\S]*?)^```$/gm;

/** Reads the text from top to bottom. Each answer is put anew, for the file as it is there. */
async function walk(answerTo: (command: string, file: string) => Promise<string> = async (command) => command): Promise<{ readonly steps: readonly Step[]; readonly filled: string }> {
  const steps: Step[] = [];
  let [heading, found, remove, result, last] = ['', '', [] as string[], '', 0];
  for (const match of tutorial.matchAll(pattern)) {
    const { heading: h, remove: r, found: f, sort, body } = match.groups!;
    if (h !== undefined) heading = h;
    if (r !== undefined) remove = [...remove, r];
    if (f !== undefined) found = f;
    if (sort === 'rig') {
      steps.push({ heading, found, remove, rig: body! });
      [found, remove] = ['', []];
    }
    if (sort === 'text') {
      const command = body!.split('\n', 1)[0]!;
      result += tutorial.slice(last, match.index) + '```text\n' + (await answerTo(command, fileAfter(steps))) + '```';
      last = match.index + match[0].length;
    }
  }
  return { steps, filled: result + tutorial.slice(last) };
}

/** What a command of the tutorial prints: `$ linewright check tutorial.rig | head -12`. */
async function answer(command: string, file: string): Promise<string> {
  const read = /^\$ linewright ([^|]+?)(?: \| head -(\d+))?$/.exec(command);
  if (read === null) throw new Error(`not a command: ${command}`);
  const { out, err } = await world({ 'tutorial.rig': file }, day).linewright(...read[1]!.split(' '));
  expect(err).toBe('');
  const lines = out.trimEnd().split('\n').slice(0, read[2] === undefined ? undefined : Number(read[2]));
  return [command, '', ...lines, ''].join('\n');
}

test('every answer is what the command prints for the lines above it', async () => {
  let answers = 0;
  const { filled } = await walk(async (command, file) => {
    answers += 1;
    return answer(command, file);
  });
  expect(answers).toBeGreaterThanOrEqual(8);
  await expect(filled).toMatchFileSnapshot(path);
});

test('every step finds what it says, and only that', async () => {
  const { steps } = await walk();
  expect(steps.length).toBeGreaterThanOrEqual(9);
  for (const [i, step] of steps.entries()) {
    const found = findingsIn({ 'tutorial.rig': fileAfter(steps.slice(0, i + 1)) }, day).map((f) => `${f.severity} ${f.code}`);
    const stated = step.found === 'nothing' ? [] : step.found.split(', ');
    expect(found.sort(), step.heading).toEqual(stated.sort());
  }
});

test('a step that finds something else is seen', async () => {
  const { steps } = await walk();
  const codes = findingsIn({ 'tutorial.rig': fileAfter(steps.slice(0, 1)) }, day).map((f) => f.code);
  expect(codes).toContain('bare-number');
  expect(codes).not.toContain('damage-left-in-service');
});
