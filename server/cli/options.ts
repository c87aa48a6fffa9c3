import { parseArgs } from 'node:util';
import { didYouMean } from '../../src-core/base/did-you-mean.ts';
import { Refusal } from './io.ts';

/** What an option takes: nothing, any word, or one of a list. */
export interface OptionDefinition {
  /** Stands in the help for the value; left out for an option that takes none. */
  readonly takes?: string;
  readonly oneOf?: readonly string[];
  readonly says: string;
}

export type OptionDefinitions = Readonly<Record<string, OptionDefinition>>;

export interface Words {
  readonly rest: readonly string[];
  /** The value of an option; '' for one that takes none and is there. */
  option(name: string): string | undefined;
}

/** Reads the words behind a command. What is not known is refused, with the nearest thing that is. */
export function readWords(words: readonly string[], definitions: OptionDefinitions): Words {
  const options = Object.fromEntries(Object.entries(definitions).map(([name, { takes }]) => [name, { type: takes === undefined ? ('boolean' as const) : ('string' as const) }]));
  const { tokens } = parseArgs({ args: [...words], options, strict: false, allowPositionals: true, tokens: true });
  const rest: string[] = [];
  const found = new Map<string, string>();
  for (const token of tokens) {
    if (token.kind === 'positional') rest.push(token.value);
    // A path of no letters would stand for the present folder.
    if (token.kind === 'positional' && token.value === '') throw new Refusal('one of the words is empty', 'a variable may lack its value');
    if (token.kind !== 'option') continue;
    const definition = Object.hasOwn(definitions, token.name) ? definitions[token.name] : undefined;
    if (definition === undefined) {
      const near = didYouMean(token.name, Object.keys(definitions));
      throw new Refusal(`${token.rawName} is not an option of this command`, near === undefined ? undefined : `did you mean --${near}?`);
    }
    if (found.has(token.name)) throw new Refusal(`${token.rawName} is given twice`);
    found.set(token.name, valueOf(token.name, token.value, definition));
  }
  return { rest, option: (name) => found.get(name) };
}

function valueOf(name: string, value: string | undefined, { takes, oneOf }: OptionDefinition): string {
  if (takes === undefined) {
    if (value !== undefined) throw new Refusal(`--${name} takes no value`);
    return '';
  }
  if (value === undefined || value === '') throw new Refusal(`--${name} lacks its ${takes}`);
  if (oneOf === undefined || oneOf.includes(value)) return value;
  const near = didYouMean(value, oneOf);
  throw new Refusal(`--${name} takes one of ${oneOf.join(', ')}, not \`${value}\``, near === undefined ? undefined : `did you mean ${near}?`);
}
