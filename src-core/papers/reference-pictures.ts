import type { Assessed } from '../assess/assessing.ts';
import type { DayNumber } from '../model/day.ts';
import { drumSection } from '../pictures/drum-section.ts';
import { loadPath } from '../pictures/load-path.ts';
import type { Picture } from '../pictures/picture.ts';
import { pullPlan } from '../pictures/pull-plan.ts';
import { repairMap } from '../pictures/repair-map.ts';
import { Project } from '../project.ts';

/** Blocks of the language that are drawn, with what their picture shows. A repair's picture is its line's, before and after. */
export const drawnBlocks: Readonly<Record<string, string>> = {
  winch: 'the drum in section, with its layers, the kept wraps and the freeboard',
  repair: 'the line before and after, with its damage, the cuts, the new splices and the strength along it',
  chain: 'every link with its load against its limit',
  pull: 'the pull from above, with tensions, loads and the area to keep out of',
};

/** The pictures of the language reference, by block: drawn of the example rigs, whose texts are given by path. */
export function referencePictures(texts: ReadonlyMap<string, string>, day: DayNumber): ReadonlyMap<string, string> {
  const project = new Project();
  for (const [path, text] of texts) project.set(path, text);
  const pictures = new Map<string, string>();
  for (const root of project.roots()) {
    for (const { assessed } of project.judge(root, day).files.get(root)?.blocks ?? []) {
      const { head } = assessed.block.definition;
      if (drawnBlocks[head] === undefined || pictures.has(head)) continue;
      const picture = draw(assessed);
      if (picture !== undefined) pictures.set(head, `${alone(picture.svg.trimEnd())}\n`);
    }
  }
  return pictures;
}

/** In a file of its own a picture meets no editor's theme, and has no use for the looks of parts that it does not have. */
function alone(svg: string): string {
  const used = new Set([...svg.matchAll(/class="([^"]+)"/g)].flatMap((match) => match[1]!.split(' ')));
  return svg.split('\n').filter((line) => !line.startsWith('.vscode-') && used.has(/^\.lw \.([\w-]+)\{/.exec(line)?.[1] ?? 'lw')).join('\n');
}

function draw(assessed: Assessed): Picture | undefined {
  switch (assessed.kind) {
    case 'winch':
      return drumSection(assessed);
    case 'repair':
      return repairMap(assessed);
    case 'chain':
      return loadPath(assessed);
    case 'pull':
      return pullPlan(assessed);
    default:
      return undefined;
  }
}
