import { describe, expect, test } from 'vitest';
import type { PaperDocument, PaperPart } from '../../src-core/papers/document.ts';
import { documentHtml } from '../../src-core/papers/document-html.ts';
import { documentMarkdown } from '../../src-core/papers/document-markdown.ts';
import { documentText } from '../../src-core/papers/document-text.ts';
import { allElements, readXml, textOf, type Element } from '../pictures/read-xml.ts';
import { halfUnknownRig, wholeRig, worn } from '../pictures/rigs.ts';
import { hebrew, hostileRig, long, papersOf, plover } from './papers-of.ts';

/** The page as strict XML: elements that HTML leaves open are left out. */
function readPage(html: string): Element {
  expect(html.startsWith('<!doctype html>\n')).toBe(true);
  return readXml(html.trim().replace('<!doctype html>\n', '').replace(/<meta [^>]*>/g, '').replace(/<col [^>]*>/g, ''));
}

const allPapers = (): [string, PaperDocument][] =>
  Object.entries({ plover: plover(), whole: wholeRig, hostile: hostileRig, unknown: halfUnknownRig, worn: worn(500), empty: '', broken: 'line {\n  length\n' }).flatMap(([rig, texts]) => [...papersOf(texts)].map(([name, paper]): [string, PaperDocument] => [`${rig}: ${name}`, paper]));

describe.each(allPapers())('%s', (_name, paper) => {
  test('as HTML it is one page of its own: well formed, nothing runs, nothing is fetched', () => {
    const html = documentHtml(paper);
    const page = readPage(html);
    const known = new Set(['html', 'head', 'title', 'style', 'body', 'header', 'footer', 'section', 'h1', 'h2', 'p', 'b', 'i', 'span', 'code', 'bdi', 'ol', 'ul', 'li', 'table', 'colgroup', 'thead', 'tbody', 'tr', 'th', 'td', 'div', 'figure', 'svg', 'desc', 'defs', 'pattern', 'g', 'rect', 'line', 'path', 'circle', 'text', 'tspan']);
    const ids = new Set<string>();
    for (const element of allElements(page)) {
      expect(known).toContain(element.name);
      for (const [name, value] of element.attributes) {
        expect(name).not.toMatch(/^on|^href$|^src$|:href$/);
        if (name === 'id') {
          expect(ids).not.toContain(value);
          ids.add(value);
        }
      }
    }
    expect(html).not.toMatch(/url\((?!#)|@import|\bhttps?:\/\/(?!www\.w3\.org\/2000\/svg)(?![^<]*<)/);
  });

  test('as Markdown it lets no markup of the user through', () => {
    const markdown = documentMarkdown(paper);
    for (const block of markdown.split('\n\n')) {
      const lines = block.split('\n').filter((line) => line.startsWith('|'));
      const columns = lines.map((line) => line.replace(/\\[\s\S]/g, '').split('|').length);
      expect(new Set(columns).size).toBeLessThanOrEqual(1);
    }
    const bare = markdown.replace(/\\[\s\S]/g, '').replace(/`[^`\n]*`/g, '');
    expect(bare).not.toMatch(/<\w|\]\(|https?:\/\/|[\u202a-\u202e\u2066-\u2069]/);
  });

  test('as text it stays within its width but for words that are longer', () => {
    const text = documentText(paper);
    for (const line of text.split('\n')) if (line.length > 100) expect(line.trim().split(/\s{2,}/).some((cell) => cell.length > 60 && !cell.includes(' ')) || line.length <= 130, line).toBe(true);
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u202a-\u202e\u2066-\u2069]/);
  });

  test('it is the same every time', () => {
    expect(documentHtml(paper)).toBe(documentHtml(paper));
  });

  test('it defers to the maker, and calls nothing safe', () => {
    const text = documentText(paper).replace(/\s+/g, ' ');
    expect(text).toContain('The maker\'s data for this line and this gear, local codes and licensed practice go before anything on this paper.');
    expect(text.replace('#1', '')).not.toMatch(/\bsafe\b|\bOK\b|!(?=\s|$)/);
  });
});

test('what the user wrote is there to be read, as it was written', () => {
  const card = papersOf(hostileRig).get('card fix')!;
  const page = readPage(documentHtml(card));
  expect(textOf(page)).toContain('<script>alert(1)</script> | a | **b** [c](javascript:d)');
  expect(textOf(page)).toContain(long);
  const bdi = [...allElements(page)].filter((e) => e.name === 'bdi').map(textOf);
  expect(bdi).toContain(`“${hebrew}”`);
  expect(documentMarkdown(card)).toContain('&lt;script&gt;alert(1)');
  expect(documentMarkdown(card)).not.toMatch(/@everyone|#1/);
  expect(documentMarkdown(card)).toContain('&#8296;“');
});

test('a half unknown rig says what is missing and how to make it known', () => {
  const papers = papersOf(halfUnknownRig);
  const said = (name: string): string => documentText(papers.get(name)!).replace(/\s+/g, ' ');
  expect(said('inspect l2')).toContain('How long `l2` is, is not known: length of `l2` is not given; add `length`');
  expect(said('card fix')).toContain('`t` measures ____ (not known: length of `l2` is not given)');
  expect(said('sheet')).toContain('not judged[missing-fact]');
});

const tables = (paper: PaperDocument): Extract<PaperPart, { part: 'table' }>[] => paper.parts.filter((p) => p.part === 'table');

test('rows to inspect go from the outer end to the drum, with each damage in the stretch where it lies', () => {
  const along = tables(papersOf(plover()).get('inspect main')!).find((t) => t.folded === true)!;
  expect(along.head[0]).toBe('m');
  expect(along.rows).toHaveLength(30);
  expect([along.rows[0]![0], along.rows.at(-1)![0]]).toEqual(['30–29', '1–0']);
  const known = Object.fromEntries(along.rows.filter((r) => r[1] !== '').map((r) => [r[0], r[1]]));
  expect(known).toEqual({ '10–9': 'heavy abrasion', '9–8': '2 cut strands, heavy abrasion', '8–7': 'heavy abrasion' });
});

test('in feet a row is three of them', () => {
  const rig = 'line grey {\n  diameter 3/8 in\n  length 85 ft 6 in\n  2026-05-01 damage cut 1 strand at 31 ft 4 in from inboard\n}\n';
  const along = tables(papersOf(rig).get('inspect grey')!).find((t) => t.folded === true)!;
  expect(along.head[0]).toBe('ft');
  expect(along.rows[0]![0]).toBe('85.5–84');
  expect(along.rows.filter((r) => r[1] !== '').map((r) => r.slice(0, 2))).toEqual([['33–30', '1 cut strand']]);
});

test('five hundred entries stay legible', () => {
  const paper = papersOf(worn(500)).get('inspect main')!;
  const along = tables(paper).find((t) => t.folded === true)!;
  expect(along.rows).toHaveLength(30);
  // What was entered many times in one stretch is told once with its number.
  for (const row of along.rows) expect(row[1]!.length).toBeLessThan(140);
});
