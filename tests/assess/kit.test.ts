import { describe, expect, test } from 'vitest';
import { kitExample } from '../../src-core/rules/example-kit.ts';
import { judgedRig } from '../support/judged-pull.ts';

const full = ['fid for 10 mm', 'tape', 'marker', 'blade', 'rule', 'needle', 'thimble for 10 mm', 'gloves', 'shackle for 19 mm'];
const said = (text: string): string[] => judgedRig(text).findings.filter((f) => f.code.startsWith('kit-')).map((f) => f.message).sort();
const missing = (text: string): string[] => judgedRig(text).messages.filter((m) => m.includes('fits is not given'));
const bag = (...more: string[]): string => kitExample([...full.filter((item) => !more.some((m) => m.split(' ')[0] === item.split(' ')[0])), ...more]);

describe('what a plan takes, against what is in the bag', () => {
  test('everything is there', () => expect(said(kitExample(full))).toEqual([]));
  test('an empty bag lacks all of it, once each', () => {
    expect(said(kitExample([]).replace('kit bag {\n}', 'kit bag {\n  holds  shovel\n}'))).toEqual([
      '`bag` lacks shackle of 19 mm, which `to-the-larch` needs', '`bag` lacks gloves, which `new-eye` needs', '`bag` lacks thimble for 10 mm, which `new-eye` needs', '`bag` lacks blade, tape, fid for 10 mm, marker, rule, needle and twine, which `new-eye` needs',
    ].sort());
  });
  test('a fid for much thicker line does not do', () => expect(said(bag('fid for 16 mm'))).toEqual(['`bag` lacks fid for 10 mm, which `new-eye` needs']));
  test('a fid for line a little thicker does', () => expect(said(bag('fid for 12 mm'))).toEqual([]));
  test('a fid of no told size is not judged', () => {
    expect(said(bag('fid'))).toEqual([]);
    expect(missing(bag('fid'))).toEqual(['what the fid in the bag fits is not given; 1 check not judged']);
  });
  test('a shackle of another size does not do', () => expect(said(bag('shackle for 22 mm'))).toEqual(['`bag` lacks shackle of 19 mm, which `to-the-larch` needs']));
  test('5/8 in is not 19 mm, and 3/4 in is', () => {
    expect(said(bag('shackle for 5/8 in')).length).toBe(1);
    expect(said(bag('shackle for 3/4 in'))).toEqual([]);
  });
  test('gear that is carried by name serves by its size', () => {
    const text = kitExample(full.filter((item) => !item.startsWith('shackle'))).replace('kit bag {', 'kit bag {\n  carries  bow-19') + '\nshackle bow-19 {\n  body  19 mm\n  wll   4.7 t\n}\n';
    expect(said(text)).toEqual([]);
  });
  test('two bags count together', () => {
    const text = kitExample(full.filter((item) => item !== 'gloves')) + '\nkit other {\n  holds  gloves\n}\n';
    expect(said(text)).toEqual([]);
  });
  test('one shackle is not two', () => {
    const text = kitExample(full).replace('-> larch', '-> shackle bow 19 mm AS-2741 -> larch');
    expect(said(text)).toEqual(['`bag` lacks shackle of 19 mm, which `to-the-larch` needs']);
    expect(said(text.replace('holds  shackle for 19 mm', 'holds  2 shackle for 19 mm'))).toEqual([]);
  });
  test('without a bag nothing is said of bags', () => expect(said(kitExample(full).replace(/kit bag \{[^}]*\}\n/, ''))).toEqual([]));
});
