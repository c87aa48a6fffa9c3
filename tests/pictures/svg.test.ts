import { describe, expect, it } from 'vitest';
import { placeFlags } from '../../src-core/pictures/place-flags.ts';
import { roundStep, ticks } from '../../src-core/pictures/scale.ts';
import { coordinate, escaped, own, ownInside, part, render } from '../../src-core/pictures/svg.ts';
import { fitText, textWidth, wrapText } from '../../src-core/pictures/text-width.ts';
import { unitNamed } from '../../src-core/units/unit-table.ts';
import { readXml, textOf } from './read-xml.ts';

describe('escaping', () => {
  it.each([
    ['markup', '<script>&"\'', '&lt;script&gt;&amp;&quot;&#39;'],
    ['control characters', 'a\u0000b\u0007c\u007Fd', 'a\uFFFDb\uFFFDc\uFFFDd'],
    ['half a pair', 'a\uD800b\uDC00c', 'a\uFFFDb\uFFFDc'],
    ['a whole pair', 'a\u{1F4A7}b', 'a\u{1F4A7}b'],
    ['line ends', 'a\r\nb\u2028c', 'a b c'],
    ['what turns text round', 'a\u202Eb\u202Dc\u200Fd', 'abcd'],
  ])('%s', (_, raw, expected) => {
    expect(escaped(raw)).toBe(expected);
  });
  it('gives back what went in', () => {
    const said = `5" < 6" & 'so' ]]> on`;
    expect(textOf(readXml(render(part('text', { id: said }, said))))).toBe(said);
    expect(readXml(render(part('text', { id: said }, said))).attributes.get('id')).toBe(said);
  });
  it('keeps a name from turning its neighbours round', () => {
    expect(own('plain')).toBe('plain');
    expect(own('\u05D0\u05D1')).toBe('\u2068\u05D0\u05D1\u2069');
    expect(own('a\u2067\u202Eb')).toBe('ab');
    expect(ownInside('length of `\u05D0` is not given')).toBe('length of `\u2068\u05D0\u2069` is not given');
  });
  it('refuses a coordinate that is not a number', () => {
    expect(() => coordinate(NaN)).toThrow(RangeError);
    expect(coordinate(-0.01)).toBe('0');
    expect(coordinate(12.34)).toBe('12.3');
  });
});

describe('texts', () => {
  it('fit the width they are given', () => {
    const long = 'a-name-that-goes-on-and-on-and-on';
    expect(fitText('short', 200, 13)).toBe('short');
    expect(textWidth(fitText(long, 80, 13), 13)).toBeLessThanOrEqual(80);
    expect(fitText(long, 80, 13)).toMatch(/^a-name.*…$/);
  });
  it('close an isolate that was cut open', () => {
    const cut = fitText(`\u2068${'\u05D0'.repeat(90)}\u2069`, 60, 13);
    expect(cut.endsWith('…\u2069')).toBe(true);
  });
  it('break between words, and inside a word that no line holds', () => {
    expect(wrapText('one two three', textWidth('one two', 13), 13, 5)).toEqual(['one two', 'three']);
    const lines = wrapText('x'.repeat(100), 100, 13, 99);
    expect(lines.join('')).toBe('x'.repeat(100));
    for (const l of lines) expect(textWidth(l, 13)).toBeLessThanOrEqual(100);
  });
});

describe('scales', () => {
  it('step in ones, twos and fives', () => {
    expect([0.7, 3, 4.1, 13, 30, 92].map((s) => roundStep(s, 5))).toEqual([0.2, 1, 1, 5, 10, 20]);
  });
  it('label round values in the unit', () => {
    expect(ticks(80 * 0.3048, unitNamed('ft'), 4).map((t) => t.label)).toEqual(['0', '20', '40', '60', '80']);
    expect(ticks(0.5, unitNamed('m'), 5).map((t) => t.label)).toEqual(['0.0', '0.1', '0.2', '0.3', '0.4', '0.5']);
  });
});

describe('flags', () => {
  it('never cover each other or a pole', () => {
    let found = 0;
    for (let seed = 1; seed < 40; seed++) {
      const flags = Array.from({ length: 7 }, (_, i) => ({ x: 30 + ((seed * 131 + i * i * 57) % 660), width: 60 + ((seed * 17 + i * 29) % 90) }));
      const placed = placeFlags(flags, 24, 736, 7);
      if (placed === undefined) continue;
      found++;
      for (const [i, a] of placed.entries()) {
        expect(a.left).toBeGreaterThanOrEqual(24);
        expect(a.left + flags[i]!.width).toBeLessThanOrEqual(736);
        for (const [j, b] of placed.entries()) {
          if (i === j) continue;
          const apart = a.left + flags[i]!.width <= b.left || b.left + flags[j]!.width <= a.left;
          if (a.row === b.row) expect(apart).toBe(true);
          const pole = flags[j]!.x;
          if (Math.abs(pole - flags[i]!.x) > 0.5 && pole > a.left && pole < a.left + flags[i]!.width) expect(a.row).toBeGreaterThan(b.row);
        }
      }
    }
    expect(found).toBeGreaterThan(35);
  });
  it('say when they do not fit', () => {
    expect(placeFlags(Array.from({ length: 9 }, (_, i) => ({ x: 100 + i, width: 90 })), 24, 736, 3)).toBeUndefined();
  });
});
