import { severities, type Finding, type Severity } from '../../src-core/assess/finding.ts';
import type { DayNumber } from '../../src-core/model/day.ts';
import { counted } from '../../src-core/papers/block-sheet.ts';
import { findingJson, type FindingJson } from '../../src-core/papers/finding-json.ts';
import { findingText } from '../../src-core/papers/finding-text.ts';
import { githubAnnotations } from '../../src-core/papers/github-annotations.ts';
import { locateIn, type Locate } from '../../src-core/papers/locate.ts';
import { sarifLog, type FileFindings } from '../../src-core/papers/sarif.ts';
import { openRigs, type OpenFolder } from '../files/open-rigs.ts';
import { dayOf } from './day-of.ts';
import { exit, strongFor, type ExitCode, type Io } from './io.ts';
import type { Words } from './options.ts';
import { plainJson } from './plain-text.ts';
import { version } from './version.ts';

interface Counts {
  readonly made: number;
  readonly failed: number;
  readonly notJudged: number;
}

/** What `linewright check --format json` prints. `version` changes when a reader of it would have to. */
export interface CheckJson {
  readonly version: 1;
  readonly day: string;
  /** Every file that was read, those that others use included. */
  readonly files: readonly string[];
  readonly findings: readonly FindingJson[];
  /** What could not be checked. */
  readonly problems: readonly { readonly path: string; readonly says: string }[];
  readonly severities: Readonly<Record<Severity, number>>;
  readonly checks: Counts;
}

/** Judges rigs: 0 when nothing is found at the chosen level, 1 when something is, 2 when something could not be checked. */
export function check(words: Words, io: Io): ExitCode {
  const { day, text } = dayOf(words, io);
  const level = (words.option('level') ?? 'warning') as Severity;
  const { folders, problems } = openRigs(words.rest.length > 0 ? words.rest : ['.'], { cwd: io.cwd, root: words.option('root'), markdown: words.option('markdown') !== undefined });
  const found = folders.flatMap((folder) => findingsIn(folder, day));
  const totals = Object.fromEntries(severities.map((s) => [s, found.filter((f) => f.finding.severity === s).length])) as Record<Severity, number>;
  const checks = folders.map((folder) => checksIn(folder, day)).reduce(sum, { made: 0, failed: 0, notJudged: 0 });
  const files = folders.flatMap((folder) => pathsOf(folder).map(folder.called));
  for (const { path, says } of problems) io.err(`linewright check: ${path} ${says}\n`);
  const format = words.option('format');
  if (format === 'json') {
    const json: CheckJson = { version: 1, day: text, files, findings: found.map(({ finding, locate }) => findingJson(finding, locate)), problems, severities: totals, checks };
    io.out(plainJson(json));
  } else if (format === 'sarif') {
    io.out(plainJson(sarifLog(folders.flatMap((folder) => filesOf(folder, day)), { version, day: text, problems })));
  } else if (format === 'github') {
    for (const line of githubAnnotations(found)) io.out(`${line}\n`);
    for (const { path, says } of problems) io.out(`::error title=linewright::${path.replaceAll('%', '%25')} ${says}\n`);
    io.out(`${summary(files.length, totals, checks, problems.length)}\n`);
  } else {
    for (const { finding, locate } of found) io.out(findingText(finding, locate, io.width, strongFor(io)).join('\n') + '\n\n');
    io.out(`${summary(files.length, totals, checks, problems.length)}\n`);
  }
  if (problems.length > 0) return exit.couldNot;
  return severities.slice(0, severities.indexOf(level) + 1).some((s) => totals[s] > 0) ? exit.found : exit.nothingFound;
}

const pathsOf = ({ project }: OpenFolder): string[] => [...project.paths].sort();
const sum = (a: Counts, b: Counts): Counts => ({ made: a.made + b.made, failed: a.failed + b.failed, notJudged: a.notJudged + b.notJudged });

function filesOf(folder: OpenFolder, day: DayNumber): FileFindings[] {
  const { project, called } = folder;
  const files = pathsOf(folder).map((path) => project.file(path)!);
  const locate = locateIn(files, called);
  return files.map((file) => ({ file, findings: project.findings(file.path, day), locate }));
}

const findingsIn = (folder: OpenFolder, day: DayNumber): { finding: Finding; locate: Locate }[] => filesOf(folder, day).flatMap(({ findings, locate }) => findings.map((finding) => ({ finding, locate })));

/** A block that several rigs share is counted once, as the first of them judges it. */
function checksIn({ project }: OpenFolder, day: DayNumber): Counts {
  const seen = new Set<object>();
  let counts: Counts = { made: 0, failed: 0, notJudged: 0 };
  for (const root of project.roots()) {
    for (const { blocks } of project.judge(root, day).files.values()) {
      for (const { block, made, failed, notJudged } of blocks) {
        if (seen.has(block)) continue;
        seen.add(block);
        counts = sum(counts, { made, failed, notJudged: notJudged.length });
      }
    }
  }
  return counts;
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
