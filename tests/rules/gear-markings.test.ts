import { describe, expect, test } from 'vitest';
import { readDay } from '../../src-core/model/day.ts';
import { rules } from '../../src-core/rules/all.ts';
import { pullExample } from '../../src-core/rules/example-pull.ts';
import { examplePath } from '../../src-core/rules/rule.ts';
import { findingsIn, projectOf, testDay } from '../support/judge-text.ts';

const block = (head: string, name: string, statements: string): string => `${head} ${name} {\n  ${statements.split('; ').join('\n  ')}\n}\n`;
const shackle = (statements: string): string => block('shackle', 'bow-19', `form bow; ${statements}`);

const about = (text: string, codes: readonly string[]) => findingsIn(text).filter((f) => codes.length === 0 || codes.includes(f.code));
const said = (text: string, ...codes: string[]): string[] => about(text, codes).map((f) => `${f.line}:${f.column} ${f.severity}[${f.code}]: ${f.message}`);
const firstBlock = (text: string) => projectOf(text).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks[0]!;

describe('pins', () => {
  const rulesOfPins = ['pin-thinner-than-body', 'pin-differs-from-table'];
  test.each([
    ['as the standard gives it', 'body 19 mm; pin 22 mm; made-to AS-2741', []],
    ['as thin as the body', 'body 19 mm; pin 19 mm; made-to AS-2741', ['4:3 warning[pin-differs-from-table]: pin of `bow-19` is 19 mm; AS 2741 gives 22 mm for a body of 19 mm']],
    ['thinner than the body, which says it all', 'body 19 mm; pin 18 mm; made-to AS-2741', ['4:3 warning[pin-thinner-than-body]: pin of `bow-19` is 18 mm, thinner than its body of 19 mm']],
    ['thicker than the standard gives it', 'body 19 mm; pin 23 mm; made-to AS-2741', ['4:3 warning[pin-differs-from-table]: pin of `bow-19` is 23 mm; AS 2741 gives 22 mm for a body of 19 mm']],
    ['a body that the standard does not list', 'body 21 mm; pin 25 mm; made-to AS-2741', []],
    ['another standard', 'body 19 mm; pin 23 mm; made-to RR-C-271', []],
  ])('%s', (_what, statements, expected) => expect(said(shackle(statements), ...rulesOfPins)).toEqual(expected));
});

describe('a limit above the table', () => {
  const marked = 'read the marking again, or correct `made-to`';
  const breaking = 'read the marking again: this looks like its breaking strength; if it is, write it as `breaking`';
  // AS 2741 gives 4.7 t for a body of 19 mm.
  test.each([
    ['4.7 t', []],
    ['4.71 t', [marked]],
    ['9.39 t', [marked]],
    ['9.4 t', [breaking]],
    ['14 t', [breaking]],
  ])('%s', (wll, helps) => expect(about(shackle(`body 19 mm; pin 22 mm; wll ${wll}; made-to AS-2741`), ['rating-above-table']).map((f) => f.finding.help)).toEqual(helps));
});

describe('gear that nothing can be read on', () => {
  test.each([
    ['shackle', 'none', 'error', '`x` carries no marking', 'WAC 296-304-07005(1)', 'have it marked again by somebody who can prove its rating, or take it out of use'],
    ['shackle', 'faded', 'error', 'the marking of `x` cannot be read', 'WAC 296-304-07005(1)', 'have it marked again by somebody who can prove its rating, or take it out of use'],
    ['strap', 'none', 'error', '`x` carries no marking', 'WAC 296-24-29419(13)', 'have its maker label it again, or take it out of use'],
    ['ring', 'faded', 'warning', 'the marking of `x` cannot be read', 'common practice', 'have it marked again by somebody who can prove its rating, or take it out of use'],
    ['hook', 'none', 'warning', '`x` carries no marking', 'common practice', 'have it marked again by somebody who can prove its rating, or take it out of use'],
  ])('a %s whose marking is %s', (head, marking, severity, what, source, help) => {
    const rated = block(head, 'x', `wll 2 t; marking ${marking}`);
    expect(said(rated, 'unmarked-gear', 'unrated-gear')).toEqual([`3:3 ${severity}[unmarked-gear]: ${what}; its working limit of 19.6 kN (2 t) stands in this file only`]);
    expect(about(rated, ['unmarked-gear']).map((f) => [f.finding.source?.startsWith(source), f.finding.help])).toEqual([[true, help]]);
    const unrated = about(block(head, 'x', `marking ${marking}`), ['unmarked-gear', 'unrated-gear']);
    expect(unrated.map((f) => `${f.severity}[${f.code}]: ${f.message}`)).toEqual([`error[unrated-gear]: nothing says what \`x\` may take: ${marking === 'faded' ? 'its marking cannot be read' : 'it carries no marking'} and no rating is written`]);
    expect(unrated[0]!.finding.source).toMatch(source);
  });
  test('gear that is only not rated is not said to be unmarked', () => expect(said(block('ring', 'x', 'body 16 mm'), 'unmarked-gear', 'unrated-gear')).toEqual([]));
});

describe('straps', () => {
  const trunk = (more = ''): string => block('strap', 'trunk', `length 3 m; wll 4 t${more}`);
  test('damage that is written is a check that fails; where none is, nobody may have looked', () => {
    const [sound, torn, twice] = [trunk(), trunk('; damage stitching'), trunk('; damage stitching; damage knotted')].map(firstBlock);
    expect([torn!.made - sound!.made, twice!.made - sound!.made]).toEqual([1, 2]);
    expect([sound!.failed, torn!.failed, twice!.failed]).toEqual([0, 1, 2]);
  });
  test('a knot is taken out, everything else is taken out of service', () => {
    expect(about(trunk('; damage stitching; damage knotted'), ['strap-damaged']).map((f) => [f.message, f.finding.help])).toEqual([
      ['`trunk` has broken stitching and is out of service', 'take it out of the bag and out of this file'],
      ['`trunk` has a knot in it and is out of service', 'take the knot out and inspect the webbing there; if it is unharmed, remove the line'],
    ]);
  });
});

// WAC 296-155-33900 table 19 and Alberta OHS Code 2009 s. 309: steel gear; fibre by common practice.
describe('damage of gear other than straps', () => {
  test.each([
    ['shackle', 'bent', '`s` is bent, twisted or stretched and is out of service', /table 19/],
    ['shackle', 'thread', '`s` has a damaged thread, or a pin that does not go home and is out of service', /table 19/],
    ['block', 'sheave', '`s` has a sheave that wobbles, stands out of line or is grooved and is out of service', /table 19/],
    ['ring', 'cracked', '`s` is cracked or broken and is out of service', /table 19/],
    ['hook', 'worn', '`s` is worn or gouged by a tenth or more and is out of service', /s\. 309/],
    ['soft-shackle', 'melted', '`s` has melted or hard glazed fibre and is out of service', /common practice/],
  ])('%s: %s', (head, kind, message, source) => {
    const [found] = about(block(head, 's', `damage ${kind}`), ['gear-damaged']);
    expect([found!.severity, found!.message]).toEqual(['error', message]);
    expect(found!.finding.source).toMatch(source);
    expect(about(block(head, 's', ''), ['gear-damaged'])).toEqual([]);
  });
  test('a pull through damaged gear is not within any limit', () => {
    const chain = (damage: string): number => projectOf(pullExample({ gear: `shackle bow-22 {\n  body  22 mm\n  wll   6.5 t\n${damage}}\n\nstrap trunk {\n  length  3 m\n  wll     5 t\n}\n` })).judge('test.rig', readDay(testDay)!).files.get('test.rig')!.blocks.filter(({ block: b }) => b.definition.head === 'pull').reduce((sum, { made, failed }) => sum + made - failed, 0);
    expect(chain('  damage bent\n')).toBe(chain('') - 1);
  });
});

describe('pickets', () => {
  const pickets = (more: string): string => block('anchor', 'holdfast', `kind pickets; pickets single${more}`);
  const asked = (text: string): string[] => firstBlock(text).notJudged.filter((n) => n.rule === 'pickets-in-wrong-soil').map((n) => n.cause.key);
  test('their soil is asked for, unless somebody wrote what they hold, and of nothing else', () => {
    expect(asked(pickets(''))).toEqual(['soil of holdfast']);
    expect(asked(pickets('; holding 4 kN'))).toEqual([]);
    expect(asked(block('anchor', 'larch', 'kind tree'))).toEqual([]);
  });
  test('wet ground is said, unless somebody wrote what they hold in it', () => {
    expect(said(pickets('; soil wet'), 'pickets-in-wrong-soil')).toEqual(['4:3 warning[pickets-in-wrong-soil]: the pickets of `holdfast` stand in wet or sandy ground; a holding power is published for loam only']);
    expect(said(pickets('; soil wet; holding 4 kN'), 'pickets-in-wrong-soil')).toEqual([]);
    expect(said(block('anchor', 'larch', 'kind tree; soil wet'), 'pickets-in-wrong-soil')).toEqual([]);
  });
});

describe('what a winch\'s plate says', () => {
  const winch = (statements: string): string => `${block('winch', 'bow-winch', `${statements}; barrel 64 mm; width 230 mm; carries main`)}\n${block('line', 'main', 'material HMPE; diameter 10 mm; length 30 m')}`;
  // On layer 2 the lever is (64 + 3 · 10) / 2 mm, on the first (64 + 10) / 2 mm: 42 kN · 94 / 74 = 53.35 kN.
  test.each([
    ['rated 42 kN at layer 1', []],
    ['rated 42 kN', []],
    ['rated 42 kN at layer 2', ['2:24 information[rated-layer-not-first]: `bow-winch` is rated 42 kN on layer 2; on the first layer it pulls 53.4 kN']],
  ])('%s', (statement, expected) => expect(said(winch(statement), 'rated-layer-not-first')).toEqual(expected));

  test.each([
    ['IP67', []],
    ['IP68', ['the depth and time that its maker states are']],
    ['IP68 depth 2 m', ['the time that its maker states is']],
    ['IP68 depth 2 m for 30 min', []],
  ])('sealing %s', (sealing, expected) => expect(said(winch(`rated 42 kN; sealing ${sealing}`), 'sealing-terms-missing')).toEqual(expected.map((what) => `3:3 information[sealing-terms-missing]: sealing of \`bow-winch\` is IP68, and ${what} not given`)));

  test('wraps below practice are put right where they are written', () => {
    const found = about(winch('rated 42 kN; keep 5 wraps'), ['wraps-below-practice']);
    expect(found.map((f) => f.message)).toEqual(['`bow-winch` keeps 5 wraps, below the 10 for HMPE line']);
    expect(found[0]!.finding.fixes.map((fix) => [fix.title, fix.edits.map((e) => e.text)])).toEqual([['Keep 10 wraps', ['10']]]);
    expect(said(winch('rated 42 kN; keep 9 wraps'), 'wraps-below-practice')).toHaveLength(1);
    expect(said(winch('rated 42 kN; keep 10 wraps'), 'wraps-below-practice')).toEqual([]);
  });
});

describe('the shop\'s own severity', () => {
  const shown = (name: string, level?: string): string[] => {
    const rule = rules.find((r) => r.name === name)!;
    const text = level === undefined ? rule.bad : `${rule.bad}\npractice {\n  severity  ${name} ${level}\n}\n`;
    return findingsIn({ ...rule.files, [examplePath]: text }, rule.exampleDay ?? testDay).filter((f) => f.code === name).map((f) => f.severity);
  };
  test.each(['anchor-overloaded', 'block-overloaded', 'block-too-small-for-line', 'bridle-too-wide', 'line-weaker-than-winch', 'link-above-breaking', 'link-above-limit', 'link-overloaded-by-pull', 'point-overloaded', 'pull-on-high-layer', 'rating-mixed-up', 'side-load-over-90', 'winch-above-working-limit', 'winch-too-weak-for-pull'])('%s cites a rating and is never lowered', (name) => {
    const own = shown(name);
    expect(own).toHaveLength(1);
    expect(shown(name, 'off')).toEqual(own);
    expect(shown(name, 'hint')).toEqual(own);
  });
  test('what cites none is lowered, raised or not shown', () => {
    expect(shown('taper-missing', 'information')).toEqual(['information']);
    expect(shown('taper-missing', 'error')).toEqual(['error']);
    expect(shown('taper-missing', 'off')).toEqual([]);
  });
});
