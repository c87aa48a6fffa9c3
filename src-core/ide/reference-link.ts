import type { DayNumber } from '../model/day.ts';
import type { Project } from '../project.ts';

/** Pages that tell more of what stands at an offset: the section of the language reference, and the rules that speak of its line. */
export interface FurtherReading {
  /** Anchor in `language.md`: `line-material`. */
  readonly section: string | undefined;
  readonly rules: readonly string[];
}

export function furtherReading(project: Project, path: string, offset: number, day: DayNumber): FurtherReading {
  const file = project.file(path);
  const here = file?.chunkAt(offset);
  if (file === undefined || here === undefined) return { section: undefined, rules: [] };
  const { line } = file.lines.lineColumn(offset);
  const codes = project.findings(path, day).filter((f) => {
    const span = f.place.chunk === here.chunk ? file.spanOf(f.place) : undefined;
    return span !== undefined && file.lines.lineColumn(span.start).line === line;
  }).map((f) => f.code);
  const block = file.bound.find((c) => c.chunk === here.chunk)?.blocks.find((b) => b.place.start <= here.at && here.at <= b.place.end);
  const statement = block?.statements.find((s) => s.place.start <= here.at && here.at <= s.place.end);
  const head = block?.definition.head;
  const section = head === undefined || statement === undefined ? head : statement.definition === block!.definition.headless ? `${head}-route` : statement.day !== undefined ? `${head}-entry-${statement.definition.head}` : `${head}-${statement.definition.head}`;
  return { section, rules: [...new Set(codes)] };
}
