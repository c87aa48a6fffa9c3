import type { Span } from '../base/span.ts';
import type { BoundBlock } from '../model/bound.ts';
import type { Edit } from '../syntax/chunk.ts';

/*
 * Lines that are written into a text that somebody laid out in their own way: blocks on one line, indented ones, fences.
 * Everything written carries its whole indent, counted from the left edge of the text.
 */

export const lineBreakOf = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? '\n';

const lineStartBefore = (text: string, at: number): number => Math.max(text.lastIndexOf('\n', at - 1), text.lastIndexOf('\r', at - 1)) + 1;
const lineEndFrom = (text: string, at: number): number => at + /^[^\r\n]*/.exec(text.slice(at))![0].length;

/** The white space that the line of an offset begins with. */
export const indentAt = (text: string, at: number): string => /^[ \t]*/.exec(text.slice(lineStartBefore(text, at)))![0];

/** True when nothing, or only a comment, stands behind an offset on its line. */
const endsItsLine = (text: string, at: number): boolean => /^[^\S\r\n]*(?:#|[\r\n]|$)/.test(text.slice(at));

/**
 * Edits of the block's chunk that put statements into it, behind the statement that ends at `after` or before all others.
 * A block that stands on one line is opened for it, and one without braces gets them. Undefined where a reason speaks of
 * the line that would be cut: some of it would be left out.
 */
export function statementsInto(block: BoundBlock, after: number | undefined, statements: readonly string[], lineBreak: string): Edit[] | undefined {
  const { text, tree } = block.chunk;
  const whole = tree.statements.find((s) => s.start === block.place.start);
  const outer = indentAt(text, block.place.start);
  const braces = whole?.block;
  const first = braces?.statements.find((s) => text.slice(lineStartBefore(text, s.start), s.start).trim() === '');
  const inner = first === undefined ? `${outer}  ` : indentAt(text, first.start);
  const lines = statements.map((s) => `${lineBreak}${inner}${s}`).join('');
  if (braces === undefined) return [{ start: block.headPlace.end, end: block.headPlace.end, text: ` {${lines}${lineBreak}${outer}}` }];
  const at = after ?? braces.open.end;
  const edits: Edit[] = [];
  // What stands beside the brace goes to a line of its own together with what is added.
  if (at !== braces.open.end && lineEndFrom(text, braces.open.end) >= at && !endsItsLine(text, braces.open.end)) edits.push({ ...spaceFrom(text, braces.open.end), text: lineBreak + inner });
  if (endsItsLine(text, at)) {
    const end = lineEndFrom(text, at);
    edits.push({ start: end, end, text: lines });
  } else {
    const space = spaceFrom(text, at);
    if (hasReason(text, at)) return undefined;
    edits.push({ ...space, text: lines + lineBreak + (text[space.end] === '}' ? outer : inner) });
  }
  return edits;
}

/** True when `# allow CODE: reason` stands on the line of an offset, or right above it. */
function hasReason(text: string, at: number): boolean {
  const start = lineStartBefore(text, at);
  return /#\s*allow\b/.test(text.slice(start, lineEndFrom(text, at))) || /#\s*allow\b/.test(text.slice(linesAbove(text, start, /^[ \t]*#/), start));
}

const spaceFrom = (text: string, start: number): Span => ({ start, end: start + /^[^\S\r\n]*/.exec(text.slice(start))![0].length });

/** Where a new block is written behind another one, and how: `written` has its lines without an indent. */
export function blockBehind(block: BoundBlock, written: string, lineBreak: string): Edit | undefined {
  const { text, tree } = block.chunk;
  const whole = tree.statements.find((s) => s.start === block.place.start);
  // Behind a block that never ends there is no place.
  if (whole?.block !== undefined && whole.block.close === undefined) return undefined;
  const outer = indentAt(text, block.place.start);
  const lines = written.split('\n').map((line) => lineBreak + (line === '' ? '' : outer + line)).join('');
  const { end } = block.place;
  if (!endsItsLine(text, end)) return { ...spaceFrom(text, end), text: `${lineBreak}${lines}${lineBreak}${lineBreak}${outer}` };
  const at = lineEndFrom(text, end);
  return { start: at, end: at, text: lineBreak + lines };
}

/**
 * What goes when a block goes: its lines with the comments right above them, and one of the two gaps around it. Only the
 * block itself where its lines hold something else too.
 */
export function linesOfBlock(text: string, { start, end }: Span): Span {
  const own = lineStartBefore(text, start);
  const endsLine = endsItsLine(text, end);
  if (text.slice(own, start).trim() !== '') return endsLine ? { start: text.slice(0, start).trimEnd().length, end } : { start, end: spaceFrom(text, end).end };
  if (!endsLine) return { start, end: spaceFrom(text, end).end };
  const from = linesAbove(text, own, /^[ \t]*#/);
  const to = nextLine(text, end);
  // A form feed begins a page, and whatever is blank beyond it belongs to something else.
  const gap = linesAbove(text, from, /^[ \t]*$/);
  const isFirst = gap === 0 || text[lineStartBefore(text, gap - 1)] === '\f';
  return isFirst ? { start: from, end: to + gapBelow(text, to) } : { start: gap, end: to };
}

const nextLine = (text: string, at: number): number => {
  const end = lineEndFrom(text, at);
  return end + (text.startsWith('\r\n', end) ? 2 : Math.min(1, text.length - end));
};

/** Where the lines begin that stand right above a line start and are all of one shape. */
function linesAbove(text: string, lineStart: number, shape: RegExp): number {
  let from = lineStart;
  while (from > 0) {
    const end = text.startsWith('\r\n', from - 2) ? from - 2 : from - 1;
    const start = lineStartBefore(text, end);
    if (!shape.test(text.slice(start, end))) break;
    from = start;
  }
  return from;
}

/** Length of the blank lines that lead on to more of the same page. */
const gapBelow = (text: string, at: number): number => /^(?:[ \t]*(?:\r\n|\n|\r))+(?=[ \t]*\S)/.exec(text.slice(at))?.[0].length ?? 0;
