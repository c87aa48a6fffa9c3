import { stretches, type PaperDocument, type PaperPart, type PaperTable, type PaperText } from './document.ts';
import { escapeHtml, isolatedHtml } from './escape-html.ts';
import { paperStyle } from './paper-style.ts';
import { tied } from '../units/number-and-unit.ts';

const htmlText = (says: PaperText): string => stretches(says).map(({ name, says: s }) => (name ? `<code>${isolatedHtml(s)}</code>` : isolatedHtml(tied(s)))).join('');
const plain = (says: PaperText): string => escapeHtml(says.replaceAll('`', ''));

/** A paper as one file of HTML that needs nothing beside it: no script, no address, a style for screen and for print. */
export function documentHtml({ title, subtitle, parts, foot }: PaperDocument): string {
  const body = [
    `<header><h1>${htmlText(title)}</h1><p>${htmlText(subtitle)}</p></header>`,
    ...sections(parts),
    ...(foot.length === 0 ? [] : [`<footer><p>${foot.map(htmlText).join(' ')}</p></footer>`]),
  ];
  return [
    '<!doctype html>',
    '<html lang="en" dir="ltr">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'">',
    '<meta name="viewport" content="width=device-width">',
    `<title>${plain(title)}</title>`,
    `<style>${paperStyle}</style>`,
    '</head>',
    '<body>',
    ...body,
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** What stands under one heading stays together on a page where it can. */
function sections(parts: readonly PaperPart[]): string[] {
  const made: string[] = [];
  let open = false;
  for (const [i, part] of parts.entries()) {
    if (part.part === 'heading') {
      if (open) made.push('</section>');
      made.push(`<section${part.newPage === true ? ' class="new-page"' : isLong(parts, i) ? ' class="long"' : ''}>`);
      open = true;
    }
    made.push(partHtml(part));
  }
  if (open) made.push('</section>');
  return made;
}

const mostRowsKept = 24;

/** What fills a page by itself may be parted between two. */
function isLong(parts: readonly PaperPart[], heading: number): boolean {
  let rows = 0;
  for (let i = heading + 1; i < parts.length && parts[i]!.part !== 'heading'; i++) {
    const part = parts[i]!;
    rows += part.part === 'table' ? part.rows.length / (part.folded === true ? 2 : 1) : part.part === 'list' ? part.items.length * 1.5 : part.part === 'finding' ? mostRowsKept : 0;
  }
  return rows > mostRowsKept;
}

function partHtml(part: PaperPart): string {
  switch (part.part) {
    case 'heading':
      return `<h2>${htmlText(part.says)}</h2>`;
    case 'text':
      return `<p${part.quiet === true ? ' class="quiet"' : part.lead === true ? ' class="lead"' : part.strong === true ? ' class="strong"' : ''}>${htmlText(part.says)}</p>`;
    case 'list': {
      const items = part.items.map((item) => `<li>${htmlText(item)}</li>`).join('');
      return part.sort === 'steps' ? `<ol>${items}</ol>` : `<ul${part.sort === 'boxes' ? ' class="boxes"' : ''}>${items}</ul>`;
    }
    case 'finding':
      return `<p class="finding ${escapeHtml(part.severity)}"><b>${escapeHtml(part.severity)}</b> ${htmlText(part.says)} <i>${escapeHtml(part.code)}</i>${part.help === '' ? '' : `<span>${htmlText(part.help)}</span>`}</p>`;
    case 'table':
      return tableHtml(part);
    case 'picture':
      return `<figure${part.share === undefined ? '' : ` class="share-${Math.round(part.share * 100)}"`}>${part.picture.svg}</figure>`;
    case 'blanks':
      return `<ul class="blanks">${part.labels.map((label) => `<li>${htmlText(label)}</li>`).join('')}</ul>`;
  }
}

const leastRowsFolded = 6;

function tableHtml(table: PaperTable): string {
  if (table.folded !== true || table.rows.length < leastRowsFolded) return plainTableHtml(table);
  const half = Math.ceil(table.rows.length / 2);
  return `<div class="folded">${plainTableHtml({ ...table, rows: table.rows.slice(0, half) })}${plainTableHtml({ ...table, rows: table.rows.slice(half) })}</div>`;
}

function plainTableHtml({ head, rows, byHand = [], widths }: PaperTable): string {
  const columns = widths === undefined ? '' : `<colgroup>${widths.map((w) => `<col style="width:${Math.round(w * 1000) / 10}%">`).join('')}</colgroup>`;
  const headless = head.every((cell) => cell === '');
  const headRow = headless ? '' : `<thead><tr>${head.map((cell) => `<th scope="col">${htmlText(cell)}</th>`).join('')}</tr></thead>`;
  const line = (row: readonly string[]): string => `<tr>${head.map((_, i) => (i === 0 ? `<th scope="row">${htmlText(row[i] ?? '')}</th>` : `<td>${htmlText(row[i] ?? '')}</td>`)).join('')}</tr>`;
  return `<table${byHand.length > 0 ? ' class="by-hand"' : ''}>${columns}${headRow}<tbody>${rows.map(line).join('\n')}</tbody></table>`;
}
