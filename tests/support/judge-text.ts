import type { Finding } from '../../src-core/assess/finding.ts';
import { readDay } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';

/** The day for which texts are judged when nothing else is said. */
export const testDay = '2026-07-01';

export type Texts = string | Readonly<Record<string, string>>;

export interface FindingLine {
  readonly path: string;
  /** One-based. */
  readonly line: number;
  readonly column: number;
  readonly code: string;
  readonly severity: string;
  readonly message: string;
  readonly finding: Finding;
}

/** A project of these files; used files that are not among them are missing. */
export function projectOf(texts: Texts): Project {
  const project = new Project();
  for (const [path, text] of Object.entries(typeof texts === 'string' ? { 'test.rig': texts } : texts)) project.set(path, text);
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  return project;
}

/** Every finding of every file, in the order of the files. */
export function findingsIn(texts: Texts, on = testDay): FindingLine[] {
  const day = readDay(on);
  if (day === undefined) throw new Error(`${on} is no day`);
  const project = projectOf(texts);
  return [...project.paths].flatMap((path) => {
    const file = project.file(path)!;
    return project.findings(path, day).map((finding) => {
      const at = file.lines.lineColumn(file.spanOf(finding.place)!.start);
      return { path, line: at.line + 1, column: at.column + 1, code: finding.code, severity: finding.severity, message: finding.message, finding };
    });
  });
}

/** The findings as lines of text, the path in front when there are several files: `5:3 error[bury-too-short]: ...`. */
export function judgeText(texts: Texts, on = testDay): string[] {
  const several = typeof texts !== 'string';
  return findingsIn(texts, on).map((f) => `${several ? f.path + ':' : ''}${f.line}:${f.column} ${f.severity}[${f.code}]: ${f.message}`);
}
