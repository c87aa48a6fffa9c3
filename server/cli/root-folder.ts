import { resolve } from 'node:path';
import { lookAt } from '../files/load-project.ts';
import { absenceSays } from '../files/open-rigs.ts';
import { Refusal, type Io } from './io.ts';
import type { Words } from './options.ts';

/** The workspace folder that was given; undefined when none was. */
export function rootFolder(words: Words, io: Io): string | undefined {
  const given = words.option('root');
  if (given === undefined) return undefined;
  const found = lookAt(resolve(io.cwd, given));
  if ('absent' in found) throw new Refusal(`--root \`${given}\` ${absenceSays[found.absent]}`);
  if (!found.isFolder) throw new Refusal(`--root \`${given}\` is not a folder`);
  return given;
}
