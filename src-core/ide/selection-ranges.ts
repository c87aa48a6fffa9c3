import type { Span } from '../base/span.ts';
import type { Project } from '../project.ts';
import { spanIn, spotAt } from './spot.ts';

/** Spans around an offset from the smallest to the whole file: token, value, clause, statement, block. */
export function selectionRanges(project: Project, path: string, offset: number): Span[] {
  const file = project.file(path);
  if (file === undefined) return [];
  const spans: Span[] = [];
  const spot = spotAt(file, offset);
  if (spot !== undefined) {
    const { token, statement, block, comment, raw } = spot;
    if (comment !== undefined) spans.push(spanIn(spot, comment));
    else if (token !== undefined) spans.push(spanIn(spot, token));
    const values = statement !== undefined ? statement.values : block !== undefined && spot.at <= block.headPlace.end ? block.header : undefined;
    for (const value of values?.all() ?? []) {
      if (value.place.start <= spot.at && spot.at <= value.place.end) spans.push(spanIn(spot, value.place));
      if (value.type === 'route') for (const link of value.links) if (link.place.start <= spot.at && spot.at <= link.place.end) spans.push(spanIn(spot, link.place));
    }
    if (raw !== undefined && raw.block === undefined) spans.push(spanIn(spot, raw));
    for (const outer of spot.chunk.tree.statements) {
      const inner = outer.block;
      if (inner === undefined || spot.at < outer.start || outer.end < spot.at) continue;
      if (inner.open.end <= spot.at && spot.at <= (inner.close?.start ?? inner.end)) spans.push(spanIn(spot, { start: inner.open.end, end: inner.close?.start ?? inner.end }));
      spans.push(spanIn(spot, outer));
    }
  }
  spans.push({ start: 0, end: file.text.length });
  spans.sort((a, b) => a.end - a.start - (b.end - b.start));
  // Each one holds the one before it.
  const nested: Span[] = [];
  for (const span of spans) {
    const last = nested.at(-1);
    if (last === undefined || (span.start <= last.start && last.end <= span.end && span.end - span.start > last.end - last.start)) nested.push(span);
  }
  return nested;
}
