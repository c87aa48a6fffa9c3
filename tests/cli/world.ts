import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import type { Io } from '../../server/cli/io.ts';
import { run } from '../../server/cli/run.ts';

export interface Said {
  readonly code: number | undefined;
  readonly out: string;
  readonly err: string;
}

/** A folder of the test's own with these files, and the command line standing in it. */
export function world(files: Readonly<Record<string, string | Uint8Array>> = {}, today = '2026-06-22') {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'linewright-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), content);
  }
  return { folder, linewright: (...words: string[]) => runIn(folder, words, { today }) };
}

/** The file that worker threads of the command line start with. */
export const program = fileURLToPath(new URL('../../server/cli.ts', import.meta.url));

export async function runIn(cwd: string, words: readonly string[], { today = '2026-06-22', styled = false, ...more }: Partial<Pick<Io, 'styled' | 'progress' | 'width'>> & { readonly today?: string } = {}): Promise<Said> {
  let [out, err] = ['', ''];
  const code = await run(words, { cwd, out: (text) => void (out += text), err: (text) => void (err += text), today: () => today, styled, width: undefined, program, ...more });
  return { code, out, err };
}

/** A rig in which nothing is found at the level of a warning. */
export const soundLine = `line main {
  material  HMPE
  strands   12
  diameter  10 mm
  length    30 m
  breaking  92 kN
  inboard   lug
  outboard  eye thimble tube bury 72 d taper 24 d stitched
  stored    covered
  2026-05-02  fitted
  2026-05-02  inspected  "nothing found"
  2026-05-02  washed
}
`;

/** The same with a bury of 46 cm, which is an error. */
export const shortBury = soundLine.replace('bury 72 d', 'bury 46 cm');
