// The language server beside what somebody would take instead: the same things described in YAML or JSON with a schema, and
// a server made with a workbench for languages. Every figure is the median, with the 95th percentile behind it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { randomFrom } from '../support/rig-text.ts';
import { BenchClient, OpenText, type Change } from './bench-client.ts';
import { figure, median, printTable, spread } from './figures.ts';
import type { Language, Site, SiteKind } from './languages.ts';
import { options } from './options.ts';
import { installPeers } from './peers/install-peers.ts';
import { peakMemory, workOf } from './process-figures.ts';
import { benchServers, type BenchServer } from './servers.ts';

const folder = mkdtempSync(join(tmpdir(), 'linewright-bench-'));
const rootUri = pathToFileURL(folder).href;
const uriOf = (name: string, { extension }: Language): string => pathToFileURL(join(folder, name + extension)).href;
const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

/** Values by what they measure, in the order in which they came up. */
class Figures {
  readonly values = new Map<string, Map<string, number[]>>();

  add(what: string, server: string, value: number): void {
    const row = this.values.get(what) ?? new Map<string, number[]>();
    this.values.set(what, row);
    row.set(server, [...(row.get(server) ?? []), value]);
  }

  print(servers: readonly BenchServer[]): void {
    const names = servers.map((s) => s.name);
    const rows = [...this.values].map(([what, row]) => {
      const peers = names.filter((n) => !n.startsWith('ours') && row.has(n)).map((n) => median(row.get(n)!));
      const ratio = row.has('ours') && peers.length > 0 ? median(row.get('ours')!) / Math.min(...peers) : NaN;
      return [what, ...names.map((n) => spread(row.get(n) ?? [])), figure(ratio)];
    });
    printTable(['', ...names, 'ours / best peer'], rows);
  }
}

function mistake(kind: SiteKind, { offset }: Site, { colon }: Language): Change {
  if (kind === 'colon') return { offset, ...colon };
  return { offset, remove: 0, insert: kind === 'number' ? '9' : 'x' };
}

async function withClient(server: BenchServer, run: (client: BenchClient) => Promise<void>): Promise<void> {
  const client = new BenchClient(server);
  try {
    await run(client);
  } catch (error) {
    console.log(`left out: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    await client.stop();
  }
}

const picker = (seed: number, sites: readonly Site[]) => {
  const random = randomFrom(seed);
  return (kind: SiteKind): Site | undefined => {
    const fitting = sites.filter((s) => s.kind === kind);
    return fitting[Math.floor(random() * fitting.length)];
  };
};

async function cold(server: BenchServer, run: number, figures: Figures): Promise<void> {
  await withClient(server, async (client) => {
    const text = new OpenText(uriOf('cold', server.language), server.language.text(60, run));
    text.change(mistake('number', picker(run, server.language.sites(text.text))('number')!, server.language));
    text.version = 1;
    figures.add('start to answer to initialize, ms', server.name, await client.initialize(rootUri));
    const first = client.pulls ? undefined : client.diagnostics(text, true);
    client.open(text);
    figures.add('start to first diagnostics, ms', server.name, (await (first ?? client.diagnostics(text, true))).at - client.started);
    figures.add('memory after that, MB', server.name, peakMemory(client.pid));
  });
}

async function opening(server: BenchServer, lines: number, run: number, figures: Figures): Promise<void> {
  const add = (what: string, value: number): void => figures.add(what, server.name, value);
  await withClient(server, async (client) => {
    const { language } = server;
    const text = new OpenText(uriOf(`open-${lines}`, language), language.text(lines, 7));
    await client.initialize(rootUri, { refreshes: true });
    text.change(mistake('number', picker(lines + run, language.sites(text.text))('number')!, language));
    text.version = 1;
    const opened = performance.now();
    const first = client.pulls ? undefined : client.diagnostics(text, true);
    client.open(text);
    add('open to diagnostics, ms', (await (first ?? client.diagnostics(text, true))).at - opened);
    if (server.restBehind === undefined || lines < server.restBehind) return;
    // The peers are done with their first answer; ours has yet to tell what the blocks come to.
    await new Promise<void>((done) => (client.onRefresh = done));
    add('open to all that is judged, ms', (await client.diagnostics(text, true)).at - opened);
  });
}

async function oneSize(server: BenchServer, lines: number, run: number, figures: Figures): Promise<void> {
  const add = (what: string, value: number): void => figures.add(what, server.name, value);
  await opening(server, lines, run, figures);
  await withClient(server, async (client) => {
    const { language } = server;
    const text = new OpenText(uriOf(`size-${lines}`, language), language.text(lines, 7));
    const sites = language.sites(text.text);
    const pick = picker(lines + run, sites);
    await client.initialize(rootUri);
    let undo = text.change(mistake('number', pick('number')!, language)).undo;
    text.version = 1;
    const first = client.pulls ? undefined : client.diagnostics(text, true);
    client.open(text);
    await (first ?? client.diagnostics(text, true));

    /** Milliseconds from a change to its diagnostics. */
    const edit = async (change: Change, hasError: boolean): Promise<number> => {
      const started = performance.now();
      const due = client.pulls ? undefined : client.diagnostics(text, hasError);
      undo = client.change(text, change);
      // What was said of the version before counts only when it names its version: others are told apart by their count.
      return (await (due ?? client.diagnostics(text, hasError))).at - started;
    };
    await edit(undo, false);
    for (let warm = 0; warm < 2; warm++) {
      await edit(mistake('number', pick('number')!, language), true);
      await edit(undo, false);
    }
    for (const [kind, what] of [['number', 'edit to diagnostics'], ['colon', 'edit that breaks the grammar'], ['name', 'edit of a reference']] as const) {
      for (let i = 0; i < options.edits; i++) {
        const site = pick(kind);
        if (site === undefined) break;
        const work = workOf(client.pid);
        add(`${what}, ms`, await edit(mistake(kind, site, language), true));
        add(`${what}, ms`, await edit(undo, false));
        await pause(10);
        if (kind === 'number') add('the same, ms of work', (workOf(client.pid) - work) / 2);
      }
    }
    add('memory after the edits, MB', peakMemory(client.pid));

    const textDocument = { uri: text.uri };
    const ask = async (what: string, capability: string, times: number, method: string, params: () => object | undefined): Promise<void> => {
      if (client.capabilities[capability] === undefined || client.capabilities[capability] === false) return;
      for (let i = 0; i < times; i++) {
        const given = params();
        if (given !== undefined) add(`${what}, ms`, (await client.request(method, { textDocument, ...given })).took);
        await pause(2);
      }
    };
    const at = (kind: SiteKind) => () => {
      const site = pick(kind);
      return site === undefined ? undefined : { position: text.position(site.offset) };
    };
    await ask('hover', 'hoverProvider', options.edits, 'textDocument/hover', at('key'));
    await ask('completion of a word', 'completionProvider', options.edits, 'textDocument/completion', at('word'));
    await ask('completion of a name', 'completionProvider', Math.ceil(options.edits / 2), 'textDocument/completion', at('name'));
    await ask('symbols', 'documentSymbolProvider', 4, 'textDocument/documentSymbol', () => ({}));
    await ask('semantic tokens', 'semanticTokensProvider', 4, 'textDocument/semanticTokens/full', () => ({}));
    await ask('formatting', 'documentFormattingProvider', 3, 'textDocument/formatting', () => ({ options: { tabSize: 2, insertSpaces: true } }));
    for (let i = 0; i < options.edits / 2 && client.capabilities['hoverProvider'] !== undefined; i++) {
      const site = pick('key');
      if (site === undefined) break;
      undo = client.change(text, mistake('number', pick('number')!, language));
      add('hover right behind an edit, ms', (await client.request('textDocument/hover', { textDocument, position: text.position(site.offset) })).took);
      await edit(undo, false);
    }

    // Two hundred keystrokes at once, the last of which is a mistake.
    const digits = sites.filter((s) => s.kind === 'digit');
    const wrong = pick('number')!;
    const work = workOf(client.pid);
    for (let i = 0; i < 199; i++) {
      const { offset } = digits[i % digits.length]!;
      client.change(text, { offset, remove: 1, insert: String((Number(text.text[offset]) + 1) % 10) });
    }
    add('burst: last of 200 edits to its diagnostics, ms', await edit(mistake('number', wrong, language), true));
    add('burst: ms of work', workOf(client.pid) - work);
    add('memory at the end, MB', peakMemory(client.pid));
  });
}

/** Opens so many files with a mistake in each: when the last answer that names one was there, with the files and what undoes each mistake. */
async function openAll(client: BenchClient, { language }: BenchServer, files: number) {
  const shared = language.shared === undefined ? undefined : new OpenText(uriOf('shared', language), language.shared);
  const texts = Array.from({ length: files }, (_, i) => {
    const text = new OpenText(uriOf(`f${i}`, language), language.text(60, i, { prefix: `f${i}-`, ...(shared === undefined ? {} : { sharedAnchor: 'shared-anchor', use: `shared${language.extension}` }) }));
    const undo = text.change(mistake('number', picker(i, language.sites(text.text))('number')!, language)).undo;
    text.version = 1;
    return { text, undo };
  });
  const started = performance.now();
  if (shared !== undefined) client.open(shared);
  const due = client.pulls ? [] : texts.map(({ text }) => client.diagnostics(text, true));
  for (const { text } of texts) client.open(text);
  const all = client.pulls ? await Promise.all(texts.map(({ text }) => client.diagnostics(text, true))) : await Promise.all(due);
  return { shared, texts, started, told: Math.max(...all.map((t) => t.at)) };
}

async function workspace(server: BenchServer, files: number, figures: Figures): Promise<void> {
  const add = (what: string, value: number): void => figures.add(what, server.name, value);
  await withClient(server, async (client) => {
    await client.initialize(rootUri, { refreshes: true });
    const { started, told } = await openAll(client, server, files);
    add('open all to the last diagnostics, ms', told - started);
    if (server.restBehind === undefined || files * 60 < server.restBehind) return;
    await new Promise<void>((done) => (client.onRefresh = done));
    add('open all to all that is judged, ms', performance.now() - started);
  });
  await withClient(server, async (client) => {
    await client.initialize(rootUri);
    const { shared, texts } = await openAll(client, server, files);
    for (let i = 0; i < Math.min(files, options.edits); i++) {
      const { text, undo } = texts[i]!;
      const before = performance.now();
      const told = client.pulls ? undefined : client.diagnostics(text, false);
      client.change(text, undo);
      add('edit of one file to its diagnostics, ms', (await (told ?? client.diagnostics(text, false))).at - before);
    }
    if (shared !== undefined) {
      // The files that are right by now fail when the name they share is gone.
      const right = texts.slice(0, Math.min(files, options.edits)).map((t) => t.text);
      const before = performance.now();
      const told = client.pulls ? [] : right.map((text) => client.diagnostics(text, true));
      client.change(shared, { offset: 'anchor '.length, remove: 0, insert: 'x' });
      const all = await Promise.all(client.pulls ? right.map((text) => client.diagnostics(text, true)) : told);
      add('shared name broken to the last of those that use it, ms', Math.max(...all.map((t) => t.at)) - before);
    }
    add('memory at the end, MB', peakMemory(client.pid));
  });
}

if (options.only?.[0] !== 'none') {
  const servers = benchServers(installPeers(options.peersFolder)).filter((s) => (options.only === undefined ? s.name !== 'ours-push' : options.only.includes(s.name)));
  const lasting = servers.filter((s) => s.startOnly !== true);
  console.log(`\nThe language server beside its peers: ${servers.map((s) => (s.rest_ms > 0 ? `${s.name} (rests ${s.rest_ms} ms after a change)` : s.name)).join(', ')}. Median / p95.`);
  try {
    const starts = new Figures();
    // Servers take turns, so that whatever else the machine does hits all alike.
    for (let run = 0; run < options.cold; run++) for (const server of servers) await cold(server, run, starts);
    console.log('\nStart, a file of 60 lines with one mistake');
    starts.print(servers);
    const bySize = new Map<number, Figures>();
    for (const lines of options.sizes) {
      const figures = new Figures();
      bySize.set(lines, figures);
      for (let run = 0; run < options.runs; run++) for (const server of lasting) await oneSize(server, lines, run, figures);
      console.log(`\n${lines} lines`);
      figures.print(lasting);
    }
    const [short, long] = [options.sizes[0], options.sizes.at(-1)];
    if (short !== undefined && long !== undefined && short !== long) {
      for (const { name } of lasting) {
        const [a, b] = [short, long].map((n) => median(bySize.get(n)!.values.get('edit to diagnostics, ms')?.get(name) ?? []));
        console.log(`${name}: edit to diagnostics at ${long} lines takes ${figure(b! / a!)} times as long as at ${short}`);
      }
    }
    for (const files of options.workspace) {
      const figures = new Figures();
      for (let run = 0; run < Math.min(options.runs, 2); run++) for (const server of lasting) await workspace(server, files, figures);
      console.log(`\n${files} files of 60 lines, one mistake in each`);
      figures.print(lasting);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
