import { stageText, type Stage } from '../../src-core/ide/stages.ts';
import { exit, type ExitCode, type Io } from './io.ts';
import { openOne } from './open-one.ts';
import type { Words } from './options.ts';

const print = (stage: Stage) => (words: Words, io: Io): ExitCode => {
  const { project, path } = openOne(words, io, `${stage} FILE`);
  io.out(stageText(project.file(path)!, stage));
  return exit.nothingFound;
};

export const tokens = print('tokens');
export const tree = print('tree');
export const model = print('model');
