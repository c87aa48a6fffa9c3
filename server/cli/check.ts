import { realpathSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { severities, type Severity } from '../../src-core/assess/finding.ts';
import { counted } from '../../src-core/papers/block-sheet.ts';
import { nameOnOneLine } from '../../src-core/papers/clean-text.ts';
import { openRigs, type OpenFolder, type Where } from '../files/open-rigs.ts';
import { usesOnly } from '../files/uses-only.ts';
import { dayOf } from './day-of.ts';
import { judgeFleet } from './fleet/judge-fleet.ts';
import { FleetWorkers, judgeHere, type JudgeRoots } from './fleet/judge-roots.ts';
import { reports, type Unchecked } from './fleet/report.ts';
import type { Counts, Judging } from './fleet/root-judge.ts';
import type { Format } from './fleet/tell.ts';
import { touchedRoots } from './fleet/touched-roots.ts';
import { exit, Refusal, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { rootFolder } from './root-folder.ts';

/** Below so many files a second thread takes longer to start than it saves; measured on two cores, at 60 lines a file. */
const manyFiles = 2000;
/** A thread is a memory of its own; more of them wait for one another. */
const mostJobs = 8;

/** Judges rigs: 0 when nothing is found at the chosen level, 1 when something is, 2 when something could not be checked. */
export async function check(words: Words, io: Io): Promise<ExitCode> {
  const { day, text } = dayOf(words, io);
  const level = (words.option('level') ?? 'warning') as Severity;
  const format = (words.option('format') ?? 'text') as Format;
  const since = words.option('since');
  const workers = workersFor(words, io);
  const where: Where = { cwd: io.cwd, root: rootFolder(words, io), markdown: words.option('markdown') !== undefined };
  try {
    const { folders, problems: unread } = openRigs(words.rest.length > 0 ? words.rest : ['.'], where, workers.watching(usesOnly));
    const problems: Unchecked[] = [];
    const problem = (path: string, says: string): void => {
      problems.push({ path, says });
      io.err(`linewright check: ${nameOnOneLine(path)} ${says}\n`);
    };
    for (const { path, says } of unread) problem(path, says);
    const chosen = folders.map((folder) => ({ folder, isJudged: rootsToJudge(folder, since) }));
    const files = chosen.flatMap(({ folder, isJudged }) => [...folder.project.paths].filter((path) => folder.project.rootsOf(path).some(isJudged)).sort().map(folder.called));
    const all = chosen.reduce((n, { folder, isJudged }) => n + folder.project.roots().filter(isJudged).length, 0);
    const report = reports[format](io.out, io.toProgram ?? io.out);
    const totals: Record<Severity, number> = { error: 0, warning: 0, information: 0, hint: 0 };
    let checks: Counts = { made: 0, failed: 0, notJudged: 0 };
    let done = 0;
    for (const { folder, isJudged } of chosen) {
      const judging: Judging = { folder: folder.root, cwd: realpathSync(io.cwd), day, telling: { format, width: io.width, styled: io.styled } };
      await judgeFleet(folder, judging, isJudged, workers.judge, {
        file(told) {
          for (const { severity } of told) totals[severity]++;
          report.file(told);
        },
        counts: (more) => void (checks = { made: checks.made + more.made, failed: checks.failed + more.failed, notJudged: checks.notJudged + more.notJudged }),
        problem,
        judged: () => io.progress?.(`${++done} of ${counted(all, 'rig')} judged`),
      });
    }
    report.end({ day: text, files, problems, severities: totals, checks, summary: summary(files.length, totals, checks, problems.length) });
    if (problems.length > 0) return exit.couldNot;
    return severities.slice(0, severities.indexOf(level) + 1).some((s) => totals[s] > 0) ? exit.found : exit.nothingFound;
  } finally {
    await workers.stop();
  }
}

function rootsToJudge(folder: OpenFolder, since: string | undefined): (root: string) => boolean {
  if (since === undefined) return () => true;
  const touched = touchedRoots(folder, since);
  return (root) => touched.has(root);
}

/** Decides who judges. Threads begin to load while files are still read, as soon as there are enough of them. */
function workersFor(words: Words, io: Io): { watching(keep: (text: string) => string): (text: string) => string; readonly judge: JudgeRoots; stop(): Promise<void> } {
  const given = words.option('jobs');
  if (given !== undefined && !/^[1-9]\d{0,3}$/.test(given)) throw new Refusal(`--jobs takes a whole number from 1, not \`${given}\``);
  const { program } = io;
  const jobs = program === undefined ? 1 : Math.min(mostJobs, given === undefined ? availableParallelism() : Number(given));
  let fleet: FleetWorkers | undefined;
  let files = 0;
  return {
    watching: (keep) => (text) => {
      files++;
      if (1 < jobs && fleet === undefined && (given !== undefined || files === manyFiles)) fleet = new FleetWorkers(program!, jobs - 1);
      return keep(text);
    },
    judge: (judging, roots) => (fleet === undefined ? judgeHere(judging, roots) : fleet.judge(judging, roots)),
    stop: async () => fleet?.stop(),
  };
}

const severityNouns: Record<Severity, (n: number) => string> = {
  error: (n) => counted(n, 'error'),
  warning: (n) => counted(n, 'warning'),
  information: (n) => counted(n, 'piece of information', 'pieces of information'),
  hint: (n) => counted(n, 'hint'),
};

/** Says what was found and what was judged, and no more than that. */
function summary(files: number, totals: Readonly<Record<Severity, number>>, { made, failed, notJudged }: Counts, problems: number): string {
  const found = severities.filter((s) => totals[s] > 0).map((s) => severityNouns[s](totals[s]));
  const first = `${counted(files, 'file')}: ${found.length === 0 ? 'nothing found' : found.join(', ')}${problems > 0 ? `; ${problems} could not be checked` : ''}.`;
  return `${first} ${counted(made, 'check')} made, ${made - failed} within the limit given by its source, ${failed} not; ${notJudged} not judged.`;
}
