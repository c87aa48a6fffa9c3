import { cleanText } from './clean-text.ts';
import { withoutPictures, type PaperDocument, type PaperPart, type PaperTable } from './document.ts';
import { wrapIndented, wrapText } from './wrap-text.ts';

export interface DocumentTextOptions {
  readonly width?: number;
  readonly strong?: (text: string) => string;
}

/** A paper as lines for a terminal or a plain printer. */
export function documentText({ title, subtitle, parts, foot }: PaperDocument, { width = 96, strong = (t) => t }: DocumentTextOptions = {}): string {
  const lines = [strong(cleanText(title)), ...wrapText(cleanText(subtitle), width), ''];
  for (const part of withoutPictures(parts)) lines.push(...partLines(part, width, strong), '');
  for (const note of foot) lines.push(...wrapText(cleanText(note), width));
  if (foot.length > 0) lines.push('');
  return lines.join('\n').replace(/\n{3,}/g, '\n\n');
}

function partLines(part: PaperPart, width: number, strong: (text: string) => string): string[] {
  switch (part.part) {
    case 'heading':
      return [strong(cleanText(part.says))];
    case 'text':
      return wrapText(cleanText(part.says), width).map((line) => (part.lead === true ? strong(line) : line));
    case 'list':
      return part.items.flatMap((item, i) => {
        const mark = part.sort === 'steps' ? `${String(i + 1).padStart(2)}. ` : part.sort === 'boxes' ? '[ ] ' : '  - ';
        return wrapIndented(cleanText(item), width, mark, '    ');
      });
    case 'finding':
      return [...wrapIndented(`${part.severity}[${part.code}] ${cleanText(part.says)}`, width, '  ', '      '), ...(part.help === '' ? [] : wrapIndented(cleanText(part.help), width, '      help: ', '        '))];
    case 'table':
      return tableLines(part, width);
    case 'picture':
      return [cleanText(part.picture.title), ...tableLines({ part: 'table', ...part.picture.table }, width)];
    case 'blanks':
      return part.labels.map((label) => `${cleanText(label)}: ${'_'.repeat(Math.max(12, Math.min(40, width - label.length - 2)))}`);
  }
}

const least = 6;
const gap = '  ';

/** Columns as wide as their contents while they fit; then the widest give way and wrap. */
function tableLines({ head, rows, byHand = [] }: PaperTable, width: number): string[] {
  const cells = [head, ...rows].map((row) => head.map((_, i) => cleanText(row[i] ?? '')));
  const widths = head.map((_, i) => Math.max(byHand.includes(i) ? least : 1, ...cells.map((row) => row[i]!.length)));
  const room = width - gap.length * head.length;
  for (let over = widths.reduce((a, b) => a + b, 0) - room; over > 0; ) {
    const widest = widths.indexOf(Math.max(...widths));
    if (widths[widest]! <= 12) break;
    const cut = Math.min(over, Math.max(1, Math.ceil(widths[widest]! / 8)));
    widths[widest] = Math.max(12, widths[widest]! - cut);
    over -= cut;
  }
  const print = (row: readonly string[]): string[] => {
    const columns = row.map((cell, i) => (cell === '' && byHand.includes(i) ? ['_'.repeat(widths[i]!)] : wrapText(cell, widths[i]!)));
    return Array.from({ length: Math.max(...columns.map((c) => c.length)) }, (_, k) => gap + columns.map((c, i) => (c[k] ?? '').padEnd(widths[i]!)).join(gap).trimEnd());
  };
  const headless = head.every((cell) => cell === '');
  return cells.flatMap((row, i) => (i > 0 ? print(row) : headless ? [] : [...wrapHead(row, widths), gap + widths.map((w) => '-'.repeat(w)).join(gap)]));
}

const wrapHead = (row: readonly string[], widths: readonly number[]): string[] => {
  const columns = row.map((cell, i) => wrapText(cell, widths[i]!));
  return Array.from({ length: Math.max(...columns.map((c) => c.length)) }, (_, k) => gap + columns.map((c, i) => (c[k] ?? '').padEnd(widths[i]!)).join(gap).trimEnd());
};
