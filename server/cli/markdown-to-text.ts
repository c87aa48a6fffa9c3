import { wrapText } from '../../src-core/papers/wrap-text.ts';

/** The little Markdown that hovers use, as lines for a terminal: tables in columns, no marks for bold and code. */
export function markdownToText(markdown: string, width: number): string[] {
  const lines: string[] = [];
  let table: string[][] = [];
  const closeTable = (): void => {
    lines.push(...printTable(table));
    table = [];
  };
  let fenced = false;
  for (const line of markdown.split('\n')) {
    if (line.startsWith('```')) {
      fenced = !fenced;
      continue;
    }
    if (!fenced && line.startsWith('|')) {
      if (!/^\|(?:\s*:?-+:?\s*\|)+$/.test(line)) table.push(cellsOf(line));
      continue;
    }
    closeTable();
    if (fenced) lines.push(line);
    else lines.push(...(line === '' ? (lines.length === 0 || lines.at(-1) === '' ? [] : ['']) : wrapText(plain(line), width)));
  }
  closeTable();
  while (lines.at(-1) === '') lines.pop();
  return lines;
}

const plain = (text: string): string => text.replaceAll('**', '').replace(/(?<![\\\w*])\*([^*]+)\*/g, '$1').replace(/`([^`]*)`/g, '$1').replace(/\[([^\]]*)\]\([^)]*\)/g, '$1').replace(/^#+ /, '').replace(/\\([|*_`])/g, '$1');

const cellsOf = (line: string): string[] => line.replace(/^\||\|\s*$/g, '').split(/(?<!\\)\|/).map((cell) => plain(cell.trim()));

function printTable(rows: readonly string[][]): string[] {
  const widths: number[] = [];
  for (const row of rows) row.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, cell.length)));
  return rows.filter((row) => row.some((cell) => cell !== '')).map((row) => row.map((cell, i) => cell.padEnd(widths[i]!)).join('   ').trimEnd());
}
