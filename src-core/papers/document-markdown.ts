import { stretches, withoutPictures, type PaperDocument, type PaperPart, type PaperTable, type PaperText } from './document.ts';
import { codeSpan, escapeMarkdown } from './escape-markdown.ts';

/** Text with its names as code. */
export const markdownText = (says: PaperText): string => stretches(says).map(({ name, says: s }) => (name ? codeSpan(s) : escapeMarkdown(s))).join('');

/** A paper as Markdown: the common kind, with tables as most renderers take them. Pictures stand as their tables. */
export function documentMarkdown({ title, subtitle, parts, foot }: PaperDocument): string {
  const blocks = [`# ${markdownText(title)}`, markdownText(subtitle), ...withoutPictures(parts).flatMap((part) => partMarkdown(part))];
  if (foot.length > 0) blocks.push('---', ...foot.map(markdownText));
  return blocks.filter((b) => b !== '').join('\n\n') + '\n';
}

function partMarkdown(part: PaperPart): string[] {
  switch (part.part) {
    case 'heading':
      return [`## ${markdownText(part.says)}`];
    case 'text':
      return [part.lead === true || part.strong === true ? `**${markdownText(part.says)}**` : markdownText(part.says)];
    case 'list':
      return [part.items.map((item, i) => `${part.sort === 'steps' ? `${i + 1}.` : part.sort === 'boxes' ? '- [ ]' : '-'} ${markdownText(item)}`).join('\n')];
    case 'finding':
      return [`**${part.severity}** ${codeSpan(part.code)}: ${markdownText(part.says)}${part.help === '' ? '' : `  \n${markdownText(part.help)}`}`];
    case 'table':
      return [markdownTable(part)];
    case 'picture':
      return [`**${markdownText(part.picture.title)}**`, markdownTable(part.picture.table)];
    case 'blanks':
      return [part.labels.map((label) => `- ${markdownText(label)}: \\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_\\_`).join('\n')];
  }
}

/** A table as lines of Markdown. */
export function markdownTable({ head, rows }: Pick<PaperTable, 'head' | 'rows'>): string {
  const line = (cells: readonly string[]): string => `| ${head.map((_, i) => markdownText(cells[i] ?? '').trim() || ' ').join(' | ')} |`;
  return [line(head), `|${' --- |'.repeat(head.length)}`, ...rows.map(line)].join('\n');
}
