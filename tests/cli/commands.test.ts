import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { commands } from '../../server/cli/commands.ts';
import { rules } from '../../src-core/rules/all.ts';
import { runIn, shortBury, soundLine, world } from './world.ts';

const examples = fileURLToPath(new URL('../../examples', import.meta.url));
const say = (...words: string[]) => runIn(examples, words);

test('help names every command, and every command its options', async () => {
  const { out, code } = await say('--help');
  expect(code).toBe(0);
  for (const { name, options } of commands) {
    expect(out).toContain(`  ${name} `);
    const own = await say(name, '--help');
    expect(own.code).toBe(0);
    for (const option of Object.keys(options)) expect(own.out).toContain(`--${option}`);
    expect((await say('help', name)).out).toBe(own.out);
  }
});

test('the version is that of the package', async () => {
  const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };
  expect((await say('--version')).out).toBe(`linewright ${version}\n`);
});

test.each([
  [['chekc'], 'linewright: `chekc` is not a command; did you mean check?\nlinewright --help lists them.\n'],
  [['check', '--lvel', 'error'], 'linewright check: --lvel is not an option of this command; did you mean --level?\n'],
  [['check', '--level', 'eror'], 'linewright check: --level takes one of error, warning, information, hint, not `eror`; did you mean error?\n'],
  [['check', '--on'], 'linewright check: --on lacks its DATE\n'],
  [['sheet', 'plover.rig', '--derivations=yes'], 'linewright sheet: --derivations takes no value\n'],
  [['format'], 'linewright format: this takes files or folders: linewright format FILE ...\n'],
  [['explain', 'bury-to-short'], 'linewright explain: `bury-to-short` is not the name of a rule; did you mean bury-too-short?\n'],
  [['explain', 'plover.rig:900'], expect.stringMatching(/^linewright explain: plover\.rig has \d+ lines\n$/)],
  [['compute', 'pul-by-layer'], 'linewright compute: `pul-by-layer` is not a calculation; did you mean pull-by-layer?\n'],
  [['compute', 'pull-by-layer', 'F_1'], 'linewright compute: `F_1` is not of the form SYMBOL=VALUE; a value with spaces stands in quotes: d="3/8 in"\n'],
  [['compute', 'pull-by-layer', 'b=3 m'], 'linewright compute: `b` is not a symbol of pull-by-layer; did you mean B?\n'],
  [['compute', 'vehicle-weight', 'm=3 m'], 'linewright compute: m (mass with everything aboard) is a mass, such as 2,650 kg; `3 m` is a length\n'],
  [['compute', 'vehicle-weight', 'm=1 kg', 'm=2 kg'], 'linewright compute: m is given twice\n'],
  [['compute', 'pull-by-layer', 'F_1=42 kN', 'B=64 mm', 'd=10 mm'], 'linewright compute: pull-by-layer lacks n (layer, counted from the barrel); write it like n="2"\n'],
  [['compute', 'pull-by-layer', 'x=3 m'], 'linewright compute: `x` is not a symbol of pull-by-layer; its symbols are F_1, B, d, n\n'],
  [['compute', 'pull-by-layer', 'F=3 kN'], 'linewright compute: `F` is not a symbol of pull-by-layer; did you mean F_1?\n'],
  [['compute', 'block-load', 'T=3 kN', 't=60 deg'], 'linewright compute: `t` is not a symbol of block-load; its symbols are T, theta\n'],
  [['compute', 'block-load', 'T=3 kN', 'thet=60 deg'], 'linewright compute: `thet` is not a symbol of block-load; did you mean theta?\n'],
  [['compute', 'anchor-vehicle-needed', 'q=1'], expect.stringContaining('its symbols are ')],
  [['compute', 'pull-by-layer', 'd=3 kN'], 'linewright compute: d (line diameter) is a length, such as 10 mm; `3 kN` is a force\n'],
  [['compute', 'pull-by-layer', 'F_1=42 kN', 'B=64 mm', 'd=10 mm', 'n=0'], expect.stringMatching(/^linewright compute: line pull on the layer is not known: layer.* the calculation holds from 1; /)],
  [['compute', 'cut-strand-share', 'n=1.5', 'N=12'], expect.stringMatching(/ is 1\.5; it must be a whole number; /)],
  [['compute', 'bridle-leg-tension', 'P=10 kN', 'theta=179.001 deg'], expect.stringMatching(/ is 179\.001 deg; the calculation holds up to 179 deg; /)],
  [['check', ''], 'linewright check: one of the words is empty; a variable may lack its value\n'],
  [['compare', 'plover.rig', ''], 'linewright compare: one of the words is empty; a variable may lack its value\n'],
  [['check', '--on', '2026-06-22', '--on', '2025-01-01'], 'linewright check: --on is given twice\n'],
  [['format', '--check', '--check', '.'], 'linewright format: --check is given twice\n'],
  [['rules', 'bury-too-short'], 'linewright rules: this takes no `bury-too-short`; linewright explain CODE tells about one rule\n'],
  [['serve'], 'linewright serve: an editor starts this as linewright serve --stdio\n'],
  [['serve', '--stdio', 'plover.rig'], 'linewright serve: an editor starts this as linewright serve --stdio\n'],
  [['explain', 'bury-too-short', '--on', '2026-06-22'], 'linewright explain: --on says nothing about a rule; it goes with a line of a file: linewright explain FILE:LINE\n'],
  [['sheet', 'plover.rig', '--derivations', '--format', 'html'], 'linewright sheet: --derivations does not go with --format html; text shows them, and JSON holds them anyway\n'],
])('%j is refused', async (words, err) => {
  expect(await say(...words)).toEqual({ code: 2, out: '', err });
});

test('every rule is listed and explained', async () => {
  const list = await say('rules');
  for (const { name, severity, why, source } of rules) {
    expect(list.out).toContain(`${name} (${severity})\n`);
    const { code, out } = await say('explain', name);
    const flat = out.replace(/\s+/g, ' ');
    expect([code, flat.includes(why.replace(/\s+/g, ' ')), flat.includes(source.replace(/\s+/g, ' '))], name).toEqual([0, true, true]);
  }
  expect((JSON.parse((await say('rules', '--format', 'json')).out) as { rules: { name: string }[] }).rules.map((r) => r.name)).toEqual(rules.map((r) => r.name).sort());
});

test('a file of one line has one', async () => {
  const { linewright } = world({ 'a.rig': 'line x {}' });
  expect((await linewright('explain', 'a.rig:2')).err).toBe('linewright explain: a.rig has 1 line\n');
});

test('a line of a rig is explained, with what is found on it', async () => {
  const { linewright } = world({ 'a.rig': shortBury });
  const { out, code } = await linewright('explain', 'a.rig:8');
  expect(code).toBe(0);
  expect(out).toContain('46 d');
  expect(out).toContain('a.rig:8:35 error[bury-too-short]');
  expect(out).not.toMatch(/\*\*|\|---/);
});

test('a calculation is made from values with units, in the units they were written in', async () => {
  const { out, code } = await say('compute', 'pull-by-layer', 'F_1=9,500 lbf', 'B=2 1/2 in', 'd=3/8 in', 'n=3');
  expect(code).toBe(0);
  expect(out).toContain('F_n = 6,240 lbf');
  expect(out).toContain('formula: F_n = F_1 (B + d) / (B + (2n − 1) d)');
  expect(out).toContain('source: US Army TM 9-2320-430-10');
  const json = JSON.parse((await say('compute', 'pull-by-layer', 'F_1=9,500 lbf', 'B=2 1/2 in', 'd=3/8 in', 'n=3', '--format', 'json')).out) as { version: number; derivation: { value: number; unit: string } };
  expect(json.version).toBe(1);
  expect(json.derivation.unit).toBe('N');
  expect(json.derivation.value).toBeCloseTo((9500 * 4.4482216152605 * 2.875) / 4.375, 6);
});

test('what rounding leaves of nothing is nothing', async () => {
  expect((await say('compute', 'block-load', 'T=10 kN', 'theta=180 deg')).out).toContain('P = 0 N\n');
});

test('symbols that are hard to type have another spelling', async () => {
  expect((await say('compute', 'block-load', 'T=10 kN', 'theta=60 deg')).out).toBe((await say('compute', 'block-load', 'T=10 kN', 'θ=60 deg')).out);
});

test('every calculation is listed with its symbols, and shows itself', async () => {
  const { calculations } = JSON.parse((await say('compute', '--format', 'json')).out) as { calculations: { name: string; inputs: { typed: string; example: string }[] }[] };
  expect(calculations.length).toBeGreaterThan(50);
  const { out } = await say('compute');
  for (const { name, inputs } of calculations) {
    expect(out).toContain(`${name}  ${inputs.map((i) => i.typed).join(' ')}\n`);
    expect((await say('compute', name)).out).toContain('formula: ');
    // Its examples are values that it can be made with.
    if (inputs.length > 0) expect(await say('compute', name, ...inputs.map((i) => `${i.typed}=${i.example}`))).toMatchObject({ code: 0, err: '' });
  }
});

test('format puts files into layout, and check names those that are not', async () => {
  const { folder, linewright } = world({ 'a.rig': '\ufeffline main {\r\nlength 30 m\r\n}\r\n', 'b.rig': soundLine, 'c/d.rig': 'line x {\n}' });
  const before = await linewright('format', '--check', '.', 'gone.rig');
  expect(before).toEqual({ code: 2, out: 'a.rig is not in layout\nc/d.rig is not in layout\n2 not in layout, 1 left as it was.\n', err: 'linewright format: gone.rig is not there\n' });
  expect((await linewright('format', '--check', 'a.rig')).code).toBe(1);
  expect(readFileSync(join(folder, 'c/d.rig'), 'utf8')).toBe('line x {\n}');
  expect((await linewright('format', '.')).code).toBe(0);
  expect(readFileSync(join(folder, 'a.rig'), 'utf8')).toBe('\ufeffline main {\r\n  length  30 m\r\n}\r\n');
  expect(readFileSync(join(folder, 'b.rig'), 'utf8')).toBe(soundLine);
  expect(await linewright('format', '--check', '.')).toEqual({ code: 0, out: '0 not in layout, 3 left as they were.\n', err: '' });
});

test('a file that is not text is not written', async () => {
  const bytes = new Uint8Array([0x6c, 0xe9, 0x20, 0x20, 0x7b]);
  const { folder, linewright } = world({ 'a.rig': bytes });
  expect((await linewright('format', 'a.rig')).err).toBe('linewright format: a.rig is not text in UTF-8\n');
  expect(new Uint8Array(readFileSync(join(folder, 'a.rig')))).toEqual(bytes);
});

test('the stages of reading', async () => {
  const { linewright } = world({ 'a.rig': 'line main "x" {\n  length  30 m # new\n  outboard eye bury 72 d }\n}' });
  expect((await linewright('tokens', 'a.rig')).out.split('\n').slice(0, 6)).toEqual(['1:1 word line', '1:6 word main', '1:11 string "x"', '1:15 left-brace {', '2:3 word length', '2:11 number 30']);
  expect((await linewright('tree', 'a.rig')).out).toBe('line main "x" {\n  length 30 m\n  outboard eye bury 72 d\n! 4:1 stray-brace: this `}` closes nothing\n');
  expect((await linewright('model', 'a.rig')).out).toContain('  length length=30 length\n');
});
