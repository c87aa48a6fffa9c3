import { resolve } from 'node:path';
import type { Project } from '../../src-core/project.ts';
import { lookAt } from '../files/load-project.ts';
import { openRigs } from '../files/open-rigs.ts';
import { Refusal, type Io } from './io.ts';
import type { Words } from './options.ts';
import { rootFolder } from './root-folder.ts';

export interface OpenedRig {
  readonly project: Project;
  readonly path: string;
  called(path: string): string;
}

/** Opens the one file that a command speaks of. */
export function openOne(words: Words, io: Io, usage: string, name = words.rest[0]): OpenedRig {
  if (name === undefined || words.rest.length > 1) throw new Refusal(`this takes one file: linewright ${usage}`);
  const found = lookAt(resolve(io.cwd, name));
  if ('real' in found && found.isFolder) throw new Refusal(`${name} is a folder`, 'name one of its rig files');
  const { folders, problems } = openRigs([name], { cwd: io.cwd, root: rootFolder(words, io) });
  const problem = problems[0];
  if (problem !== undefined) throw new Refusal(`${problem.path} ${problem.says}`);
  const folder = folders[0]!;
  return { project: folder.project, path: folder.asked[0]!, called: folder.called };
}
