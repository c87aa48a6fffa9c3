import { readDay } from '../../src-core/model/day.ts';
import { drumSection } from '../../src-core/pictures/drum-section.ts';
import { lineMap } from '../../src-core/pictures/line-map.ts';
import { loadPath } from '../../src-core/pictures/load-path.ts';
import type { Picture } from '../../src-core/pictures/picture.ts';
import { pullByLineOut } from '../../src-core/pictures/pull-by-line-out.ts';
import { pullPlan } from '../../src-core/pictures/pull-plan.ts';
import { repairMap } from '../../src-core/pictures/repair-map.ts';
import { splicePicture } from '../../src-core/pictures/splice-picture.ts';
import { Project } from '../../src-core/project.ts';
import type { Assessed } from '../../src-core/assess/assessing.ts';
import type { AssessedLine } from '../../src-core/assess/assess-line.ts';
import type { Value } from '../../src-core/mechanics/derivation.ts';
import { sources } from '../../src-core/trade/sources.ts';
import { between } from '../../src-core/units/amount.ts';

/** A rig of one file, assessed as of midsummer 2026. */
export function assessRig(text: string): Assessed[] {
  const project = new Project();
  project.set('a.rig', text);
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  return project.judge('a.rig', readDay('2026-06-22')!).files.get('a.rig')!.blocks.map((b) => b.assessed);
}

export const needed = (low: number, high: number): Value => ({ amount: between(low, high), kind: 'resistance', origin: { from: 'constant', source: sources.geometry } });

/** Every picture that an assessed rig gives, by what it shows. */
export function picturesOf(assessed: readonly Assessed[]): Map<string, Picture> {
  const pictures = new Map<string, Picture>();
  const splices = (line: AssessedLine, when: string): void => {
    for (const piece of line.pieces.values()) {
      pictures.set(`map ${when} ${piece.name}`, lineMap(line, piece.name));
      for (const [i, end] of [piece.inboard, piece.outboard, ...piece.joints].entries()) pictures.set(`splice ${when} ${piece.name} ${i}`, splicePicture(piece, end));
    }
  };
  for (const one of assessed) {
    if (one.kind === 'line') {
      pictures.set(`map ${one.facts.name}`, lineMap(one));
      splices(one, 'now');
    } else if (one.kind === 'winch') {
      pictures.set(`drum ${one.name}`, drumSection(one));
      pictures.set(`pull ${one.name}`, pullByLineOut(one));
      pictures.set(`pull needed ${one.name}`, pullByLineOut(one, needed(30_000, 31_000)));
    } else if (one.kind === 'chain') pictures.set(`path ${one.name}`, loadPath(one));
    else if (one.kind === 'pull') pictures.set(`plan ${one.name}`, pullPlan(one));
    else if (one.kind === 'repair') {
      pictures.set(`repair ${one.name}`, repairMap(one));
      splices(one.after, `after ${one.name}`);
    }
  }
  return pictures;
}
