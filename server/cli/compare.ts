import { existsSync, realpathSync } from 'node:fs';
import { relative, resolve, sep } from 'node:path';
import { severities, type Severity } from '../../src-core/assess/finding.ts';
import { compareSides, findsMore } from '../../src-core/papers/compare.ts';
import { compareMarkdown, compareText } from '../../src-core/papers/compare-text.ts';
import { comparedSide, type ComparedSide } from '../../src-core/papers/compared-side.ts';
import type { Project } from '../../src-core/project.ts';
import { neededRepository, Revision, repositoryOf } from '../files/git-revision.ts';
import { isInside, lookAt } from '../files/load-project.ts';
import { absenceSays, openRigs } from '../files/open-rigs.ts';
import { dayOf } from './day-of.ts';
import { exit, Refusal, strongFor, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { plainJson } from './plain-text.ts';
import { rootFolder } from './root-folder.ts';

const usage = 'linewright compare OLD NEW, or linewright compare --against REV PATH; a revision is written REV:PATH';

/** One of the two things that are compared, opened. */
interface Side {
  readonly name: string;
  readonly project: Project;
  readonly isFolder: boolean;
  readonly isRevision: boolean;
  /** The file or folder itself, as a path in the project. */
  readonly base: string;
  called(path: string): string;
}

/** Tells what became of a rig: 0 when nothing is found now that was not before, 1 when something is, 2 when it could not be compared. */
export function compare(words: Words, io: Io): ExitCode {
  const { day, text } = dayOf(words, io);
  const level = (words.option('level') ?? 'warning') as Severity;
  const against = words.option('against');
  const paths = against === undefined ? words.rest : [`${against}:${fromTop(words.rest[0], io)}`, ...words.rest];
  const [old, now, ...more] = paths;
  if (old === undefined || now === undefined || more.length > 0) throw new Refusal('this takes two things to compare', usage);
  const [a, b] = [openSide(old, words, io), openSide(now, words, io)];
  if (a.isRevision && b.isRevision && words.option('root') !== undefined) throw new Refusal('--root says nothing about revisions', 'what they use is found in the repository');
  if (a.isFolder !== b.isFolder) throw new Refusal(`${old} and ${now} are a file and a folder`, 'compare two of a kind');
  const side = (s: Side, other: Side): ComparedSide => comparedSide(s.project, { name: s.name, day, called: s.called, keyOf: keyOf(s, other) });
  const comparison = compareSides(side(a, b), side(b, a), text);
  const format = words.option('format') ?? 'text';
  io.out(format === 'json' ? plainJson(comparison) : format === 'markdown' ? compareMarkdown(comparison) : compareText(comparison, { width: io.width ?? 96, strong: strongFor(io) }));
  return findsMore(comparison, severities.slice(0, severities.indexOf(level) + 1)) ? exit.found : exit.nothingFound;
}

/** Files of one name on both sides belong together, and so do the two that were asked for, whatever they are called. */
function keyOf(side: Side, other: Side): (path: string) => string {
  if (side.isFolder) return (path) => (side.base === '' ? path : path.startsWith(`${side.base}/`) ? path.slice(side.base.length + 1) : `/${path}`);
  return (path) => (path === side.base ? `asked ${[side.base, other.base].sort()[0]!}` : path);
}

/** A path as it is counted from the top of its repository. */
function fromTop(path: string | undefined, io: Io): string {
  if (path === undefined) throw new Refusal('this takes a file or folder to compare', usage);
  const top = neededRepository(io.cwd, path);
  const full = resolve(realpathSync(io.cwd), path);
  const found = lookAt(full);
  const real = 'real' in found ? found.real : full;
  if (!isInside(top, real)) throw new Refusal(`${path} is under no version control that \`git\` knows of`);
  // A link may have led elsewhere then: it is followed there.
  return relative(top, isInside(top, full) ? full : real).split(sep).join('/');
}

function openSide(word: string, words: Words, io: Io): Side {
  const full = resolve(io.cwd, word);
  const colon = word.indexOf(':');
  if (colon > 0 && !existsSync(full)) return openRevision(word.slice(0, colon), word.slice(colon + 1), word, io);
  const found = lookAt(full);
  const isFolder = 'real' in found && found.isFolder;
  // Both sides may use the same files: up to the top of the repository, as a revision has them.
  const top = rootFolder(words, io) ?? repositoryOf(isFolder ? full : resolve(full, '..'));
  const { folders, problems } = openRigs([word], { cwd: io.cwd, root: top, fenceless: true });
  const problem = problems[0];
  if (problem !== undefined) throw new Refusal(`${problem.path} ${problem.says}`);
  const folder = folders[0]!;
  const base = isFolder ? relative(folder.root, found.real).split(sep).join('/') : folder.asked[0]!;
  return { name: word, project: folder.project, isFolder, isRevision: false, base, called: folder.called };
}

/** As the file would be called if it stood where it stood then. */
const callHere = (full: string, cwd: string): string => (isInside(cwd, full) ? relative(cwd, full).split(sep).join('/') : full);

function openRevision(name: string, path: string, word: string, io: Io): Side {
  const top = neededRepository(io.cwd, `${word} is not there, and this folder`);
  const revision = Revision.open(top, name);
  if (revision === undefined) throw new Refusal(`\`${name}\` is not a revision`, 'a revision is a commit, a branch or a tag, such as HEAD~1');
  // As git has it: from the top, or with `./` from the folder we stand in.
  const here = relative(top, realpathSync(io.cwd)).split(sep).join('/');
  const asked = (path.startsWith('./') || path.startsWith('../') || path === '.' ? resolve('/', here, path) : resolve('/', path)).slice(1);
  const found = revision.real(asked);
  if ('absent' in found) throw new Refusal(`${word} ${absenceSays[found.absent]}`);
  const base = found.real;
  const below = revision.below(base);
  const isFolder = !below.includes(base);
  const rigs = isFolder ? below.filter((p) => p.endsWith('.rig')) : [base];
  if (below.length === 0) throw new Refusal(`${path === '' ? 'the top folder' : path} is not there at ${name}`);
  if (rigs.length === 0) throw new Refusal(`${path} holds no rig files at ${name}`);
  const read = isFolder ? undefined : revision.read(base);
  if (read !== undefined && 'absent' in read) throw new Refusal(`${word} ${absenceSays[read.absent]}`);
  return { name: word, project: revision.project(rigs), isFolder, isRevision: true, base, called: (p) => callHere(resolve(top, ...p.split('/')), realpathSync(io.cwd)) };
}
