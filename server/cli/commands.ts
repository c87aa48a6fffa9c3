import type { ExitCode, Io } from './io.ts';
import type { OptionDefinition, OptionDefinitions, Words } from './options.ts';

export interface Command {
  readonly name: string;
  /** What stands behind the name. */
  readonly usage: string;
  readonly says: string;
  readonly options: OptionDefinitions;
  /** Undefined keeps the program running: the language server ends it. */
  run(words: Words, io: Io): Promise<ExitCode | undefined>;
}

const on: OptionDefinition = { takes: 'DATE', says: 'judge as of this day, such as 2026-06-22; today when left out' };
const root: OptionDefinition = { takes: 'FOLDER', says: 'the workspace folder that `use` may not leave; the present one for rigs inside it' };
const format: OptionDefinition = { takes: 'text|json', oneOf: ['text', 'json'], says: 'text for people (the default), or JSON for programs' };
const paper: OptionDefinition = { takes: 'text|markdown|html', oneOf: ['text', 'markdown', 'html'], says: 'text (the default), Markdown, or one self-contained page of HTML to print' };

/** Every command. Each loads what it needs when it runs, so that a short answer comes at once. */
export const commands: readonly Command[] = [
  {
    name: 'check',
    usage: '[PATH ...]',
    says: 'Judges rigs, and what they use. A folder stands for every rig under it; without a path it is the present one. Of a Markdown document its rig fences are judged, as one rig.',
    options: { on, markdown: { says: 'judge the rig fences of the Markdown documents in folders as well' }, level: { takes: 'LEVEL', oneOf: ['error', 'warning', 'information', 'hint'], says: 'end with 1 when something of this severity or above is found: error, warning (the default), information, hint' }, format: { takes: 'text|json|sarif|github', oneOf: ['text', 'json', 'sarif', 'github'], says: 'text for people (the default), JSON for programs, SARIF 2.1.0, or annotations of a workflow' }, root, since: { takes: 'REV', says: 'judge only rigs that changed since a revision of git, such as HEAD, and those that take a changed file in' }, jobs: { takes: 'NUMBER', says: 'judge on so many threads; when left out, on as many as there are cores once there are thousands of files, and else on one' } },
    run: async (words, io) => (await import('./check.ts')).check(words, io),
  },
  {
    name: 'sheet',
    usage: 'FILE',
    says: 'Prints what a rig comes to: every value, where it comes from, and what is not known.',
    options: { on, format: { takes: 'text|json|markdown|html', oneOf: ['text', 'json', 'markdown', 'html'], says: 'text for people (the default), JSON for programs, or the build sheet with what is found as Markdown or one page of HTML' }, derivations: { says: 'print under each block how every value came about' }, root },
    run: async (words, io) => (await import('./sheet.ts')).sheet(words, io),
  },
  {
    name: 'card',
    usage: 'REPAIR FILE',
    says: 'Writes the step card of a repair: tools, marks, steps, checks, and what is then temporary.',
    options: { on, format: paper, root },
    run: async (words, io) => (await import('./card.ts')).card(words, io),
  },
  {
    name: 'brief',
    usage: 'PULL FILE',
    says: 'Writes the brief of a pull: who stands where, order of work, limits, and the numbers that decide.',
    options: { on, format: paper, root },
    run: async (words, io) => (await import('./brief.ts')).brief(words, io),
  },
  {
    name: 'inspect',
    usage: 'LINE FILE',
    says: 'Writes a sheet to fill in by hand while a line is inspected, from the hook to the drum.',
    options: { on, format: paper, root },
    run: async (words, io) => (await import('./inspect.ts')).inspect(words, io),
  },
  {
    name: 'compare',
    usage: 'OLD NEW | --against REV PATH',
    says: 'Tells what became of a rig: which strengths, lengths, margins and findings changed, and by which lines. OLD and NEW are two files, two folders, or revisions of git as REV:PATH. Ends with 1 when something is found in NEW that was not in OLD, or an entry of a logbook is no longer there as written.',
    options: { on, against: { takes: 'REV', says: 'compare a file or folder with what it was at a revision of git, such as HEAD' }, level: { takes: 'LEVEL', oneOf: ['error', 'warning', 'information', 'hint'], says: 'end with 1 when something of this severity or above is new: warning when left out' }, format: { takes: 'text|json|markdown', oneOf: ['text', 'json', 'markdown'], says: 'text for people (the default), JSON for programs, or Markdown for a review' }, root },
    run: async (words, io) => (await import('./compare.ts')).compare(words, io),
  },
  {
    name: 'logbook',
    usage: 'LINE FILE',
    says: 'Tells the life of a line: every dated entry, with length and strength after it.',
    options: { on, format: { takes: 'text|json|markdown|html', oneOf: ['text', 'json', 'markdown', 'html'], says: 'text for people (the default), JSON for programs, Markdown, or one page of HTML with the line drawn' }, root },
    run: async (words, io) => (await import('./logbook.ts')).printLogbook(words, io),
  },
  {
    name: 'textconv',
    usage: 'FILE',
    says: 'Prints a rig with what each block comes to under it, so that `git diff` shows changed loads.',
    options: { on },
    run: async (words, io) => (await import('./textconv.ts')).printTextconv(words, io),
  },
  {
    name: 'explain',
    usage: 'CODE | FILE:LINE',
    says: 'Tells why a rule is there, with source and example; or what a line of a rig comes to.',
    options: { on, root },
    run: async (words, io) => (await import('./explain.ts')).explain(words, io),
  },
  {
    name: 'rules',
    usage: '',
    says: 'Lists the rules.',
    options: { format },
    run: async (words, io) => (await import('./list-rules.ts')).listRules(words, io),
  },
  {
    name: 'compute',
    usage: '[NAME [SYMBOL=VALUE ...]]',
    says: 'Makes one calculation from values with units; without values it shows it, without a name it lists all.',
    options: { format },
    run: async (words, io) => (await import('./compute.ts')).compute(words, io),
  },
  {
    name: 'format',
    usage: 'PATH ...',
    says: 'Puts rigs into the one layout. Numbers, names and prose stay as they are written.',
    options: { check: { says: 'change nothing; end with 1 and name the files that are not in layout' } },
    run: async (words, io) => (await import('./format.ts')).format(words, io),
  },
  {
    name: 'serve',
    usage: '--stdio',
    says: 'Runs the language server for an editor.',
    options: { stdio: { says: 'speak over standard input and output, the only way there is' } },
    run: async (words) => (await import('./serve.ts')).serve(words),
  },
  {
    name: 'tokens',
    usage: 'FILE',
    says: 'Prints the tokens of a file, for work on the language.',
    options: { root },
    run: async (words, io) => (await import('./stages.ts')).tokens(words, io),
  },
  {
    name: 'tree',
    usage: 'FILE',
    says: 'Prints how its statements nest.',
    options: { root },
    run: async (words, io) => (await import('./stages.ts')).tree(words, io),
  },
  {
    name: 'model',
    usage: 'FILE',
    says: 'Prints what its statements were read as, in SI.',
    options: { root },
    run: async (words, io) => (await import('./stages.ts')).model(words, io),
  },
];
