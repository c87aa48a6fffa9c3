import { expect, test } from 'vitest';
import { rules } from '../../src-core/rules/all.ts';
import { findingsIn } from '../support/judge-text.ts';

// Each rule's own bad example, with one more bad thing that happened to a line in it: what was found before is found still.

const news = ['heated 90 degC at 1 m from inboard', 'heated 90 degC', 'damage stain at 2 m from inboard', 'damage abrasion heavy at 3 m from inboard', 'damage cut at 3 m from inboard', 'damage cut 3 strands at 3 m from inboard', 'damage kink at 50 cm from outboard', 'pulled 9,000 kN'];

/** Which link breaks first is a remark that needs every strength; a finding that moved to another line has no reason beside it any more. */
const remarks = new Set(['weak-link-at-anchor', 'cannot-be-set-aside']);

const examples = rules.flatMap(({ name, bad }) => (remarks.has(name) ? [] : [...bad.matchAll(/^line (\S+)[^{\n]*\{\n/gm)].map((m) => ({ name, line: m[1]!, bad, end: bad.indexOf('\n}', m.index) }))));

// Whatever the news leaves unknown, what was known before still stands.
test.each(news)('no finding goes because a line was %s', (entry) => {
  for (const { name, line, bad, end } of examples) {
    const count = (text: string): number => findingsIn(text).filter((f) => f.code === name).length;
    expect(count(`${bad.slice(0, end)}\n  2026-06-20  ${entry}${bad.slice(end)}`), `${name}, ${line}`).toBeGreaterThanOrEqual(count(bad));
  }
});
