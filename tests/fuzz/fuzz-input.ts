import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { randomFrom } from '../support/rig-text.ts';
import { askFuzz, drawFuzz, fuzzPath, fuzzProject, judgeFuzz } from './drive-rig.ts';
import { mutateText } from './mutate-text.ts';
import { grammarText } from './rig-grammar.ts';

const folder = join(import.meta.dirname, '../../examples');
const examples = readdirSync(folder).filter((name) => name.endsWith('.rig')).map((name) => readFileSync(join(folder, name), 'utf8'));

/** Input number `i` of a seed: each can be made again without those before it. */
export function fuzzInput(seed: number, i: number): { readonly text: string; readonly random: () => number } {
  const random = randomFrom(Math.imul(seed, 0x9e3779b1) ^ Math.imul(i + 1, 0x85ebca6b));
  const kind = random();
  if (kind < 0.35) return { text: grammarText(random), random };
  if (kind < 0.9) return { text: mutateText(grammarText(random), random), random };
  const example = examples[Math.floor(random() * examples.length)]!;
  return { text: mutateText(example, random), random };
}

/** How far an input is driven: every one is read and judged, some are asked everything that an editor asks. */
export type Depth = 'judge' | 'everything';

/** What is wrong with an input; an exception counts as that. */
export function tryInput(text: string, random: () => number, depth: Depth): string[] {
  try {
    const project = fuzzProject(text);
    const wrong = judgeFuzz(project);
    if (depth === 'judge' || wrong.length > 0) return wrong;
    const at = (): number => Math.floor(random() * (text.length + 1));
    wrong.push(...askFuzz(project, [at(), at(), at()]), ...drawFuzz(project));
    // An edit, so that what is kept from before is used.
    const start = at();
    project.edit(fuzzPath, { start, end: Math.min(text.length, start + Math.floor(random() * 8)), text: random() < 0.5 ? '' : '{' });
    return [...wrong, ...judgeFuzz(project)];
  } catch (error) {
    return [error instanceof Error ? (error.stack ?? error.message) : String(error)];
  }
}

/** The shortest text that still goes wrong, as far as cutting pieces out finds it. */
export function shrink(text: string, fails: (text: string) => boolean): string {
  let now = text;
  for (let size = now.length >> 1; size >= 1; size = size > 1 ? size >> 1 : 0) {
    for (let at = 0; at < now.length; ) {
      const shorter = now.slice(0, at) + now.slice(at + size);
      if (fails(shorter)) now = shorter;
      else at += size;
    }
  }
  return now;
}
