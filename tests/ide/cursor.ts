import { readDay, type DayNumber } from '../../src-core/model/day.ts';
import { Project } from '../../src-core/project.ts';

export const day: DayNumber = readDay('2026-06-22')!;

export interface Cursor {
  readonly project: Project;
  readonly path: string;
  readonly offset: number;
  /** The text of a file without the mark. */
  text(path?: string): string;
}

/**
 * Files from one text: `=== path` begins a file, `$0` is the cursor. Text without a file line is `a.rig`.
 */
export function cursorIn(fixture: string): Cursor {
  const project = new Project();
  let at: { path: string; offset: number } | undefined;
  const parts = fixture.startsWith('===') ? fixture.split(/^=== (.+)\n/m).slice(1) : ['a.rig', fixture];
  for (let i = 0; i < parts.length; i += 2) {
    const [path, text] = [parts[i]!, parts[i + 1]!];
    const offset = text.indexOf('$0');
    if (offset >= 0) at = { path, offset };
    project.set(path, text.replace('$0', ''));
  }
  for (const path of project.wanted()) project.setAbsent(path, 'missing');
  if (at === undefined) throw new Error('the fixture has no $0');
  return { project, ...at, text: (path = at!.path) => project.file(path)!.text };
}

/** A span as the text it covers, with its line. */
export const shown = (project: Project, path: string, span: { readonly start: number; readonly end: number }): string => {
  const file = project.file(path)!;
  return `${path}:${file.lines.lineColumn(span.start).line + 1} ${file.text.slice(span.start, span.end)}`;
};

export const line = `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d
`;

export const winch = `winch bow-winch {
  rated    42 kN at layer 1
  barrel   64 mm
  width    230 mm
  flange   165 mm
  keep     10 wraps
  carries  main
}
`;
