import { didYouMean } from '../../src-core/base/did-you-mean.ts';
import { nameOnOneLine } from '../../src-core/papers/clean-text.ts';
import { wrapIndented } from '../../src-core/papers/wrap-text.ts';
import { commands, type Command } from './commands.ts';
import { exit, Refusal, strongFor, type ExitCode, type Io } from './io.ts';
import { readWords } from './options.ts';
import { plainText } from './plain-text.ts';
import { version } from './version.ts';

const intro = 'Linewright reads rig files: a recovery winch, its synthetic line, and what hangs on it.';

/**
 * Runs the command line. Gives the exit code, or undefined for a command that goes on by itself: 0 nothing found,
 * 1 something found, 2 could not do what was asked.
 */
export async function run(argv: readonly string[], world: Io): Promise<ExitCode | undefined> {
  const io: Io = {
    ...world,
    today: () => world.today(),
    out: (text) => world.out(plainText(text, world.styled)),
    err: (text) => world.err(plainText(text)),
    ...(world.width === undefined ? { toProgram: (text: string) => world.out(text) } : {}),
    ...(world.progress === undefined ? {} : { progress: (text: string) => world.progress!(plainText(text)) }),
  };
  const [name, ...rest] = argv;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const asked = commands.find((c) => c.name === rest[0]);
    io.out(asked === undefined || name !== 'help' ? overview(strongFor(io)) : help(asked, strongFor(io)));
    return name === undefined ? exit.couldNot : exit.nothingFound;
  }
  if (name === '--version' || name === '-v') {
    io.out(`linewright ${version}\n`);
    return exit.nothingFound;
  }
  const command = commands.find((c) => c.name === name);
  if (command === undefined) {
    const near = didYouMean(name, commands.map((c) => c.name));
    io.err(`linewright: \`${name}\` is not a command${near === undefined ? '' : `; did you mean ${near}?`}\nlinewright --help lists them.\n`);
    return exit.couldNot;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    io.out(help(command, strongFor(io)));
    return exit.nothingFound;
  }
  try {
    return await command.run(readWords(rest, command.options), io);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    io.err(`linewright ${command.name}: ${nameOnOneLine(error.message)}${error.help === undefined ? '' : `; ${error.help}`}\n`);
    return exit.couldNot;
  }
}

function overview(strong: (text: string) => string): string {
  const width = Math.max(...commands.map((c) => c.name.length)) + 2;
  const lines = commands.flatMap((c) => wrapIndented(c.says, 96, `  ${c.name.padEnd(width)}`, ' '.repeat(width + 2)));
  return [intro, '', strong('linewright COMMAND ...'), '', ...lines, '', 'linewright COMMAND --help tells more. Ends with 0 when nothing is found, 1 when something is,', '2 when something could not be done.', ''].join('\n');
}

function help(command: Command, strong: (text: string) => string): string {
  const options = Object.entries(command.options).map(([name, { takes, says }]) => [`--${name}${takes === undefined ? '' : ` ${takes}`}`, says] as const);
  const width = Math.max(0, ...options.map(([text]) => text.length)) + 2;
  return [strong(`linewright ${command.name} ${command.usage}`.trimEnd()), '', ...wrapIndented(command.says, 96, '  ', '  '), '', ...options.flatMap(([text, says]) => wrapIndented(says, 96, `  ${text.padEnd(width)}`, ' '.repeat(width + 2))), ''].join('\n');
}
