import { parseAst } from 'rolldown/parseAst';

/** One small wrong change. All mutants of a file are in its text at once; the one whose number is active takes effect. */
export interface Mutant {
  readonly id: number;
  /** Number of the first change at this place: passing the place is noted under it. */
  readonly site: number;
  readonly file: string;
  /** Counted from 1. */
  readonly line: number;
  readonly change: string;
  /** The source line it stands on, without its indentation: equivalent mutants are listed by it. */
  readonly text: string;
}

export interface MutatedFile {
  /** TypeScript in which every mutant waits for its number. */
  readonly code: string;
  readonly mutants: readonly Mutant[];
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [part: string]: unknown;
}

/** What is written for people, and examples that are themselves checks: a change there is no fault of the mechanics. */
const forPeople = new Set([
  'means', 'meaning', 'summary', 'why', 'source', 'sources', 'formula', 'bad', 'good', 'help', 'says', 'message', 'title', 'symbol', 'name', 'key',
  'worked', 'noExample', 'assumptions', 'exampleDay',
]);

const arithmetic: Readonly<Record<string, string>> = { '+': '-', '-': '+', '*': '/', '/': '*', '%': '*', '**': '*', '<<': '>>', '>>': '<<', '&': '|', '|': '&' };
/** Boundary first, then the opposite. */
const comparison: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='], '<=': ['<', '>'], '>': ['>=', '<='], '>=': ['>', '<'], '===': ['!=='], '!==': ['==='],
};
const swappedMath: Readonly<Record<string, string>> = { min: 'max', max: 'min', ceil: 'floor', floor: 'ceil', round: 'ceil' };
const swappedWord: Readonly<Record<string, string>> = { up: 'down', down: 'up', low: 'high', high: 'low' };
const swappedQuantifier: Readonly<Record<string, string>> = { some: 'every', every: 'some' };
const typeWrappers = new Set(['TSAsExpression', 'TSSatisfiesExpression', 'TSNonNullExpression', 'TSInstantiationExpression']);

const isNode = (value: unknown): value is Node => typeof value === 'object' && value !== null && typeof (value as Node).type === 'string' && typeof (value as Node).start === 'number';

function childrenOf(node: Node): Node[] {
  const found: Node[] = [];
  for (const [part, value] of Object.entries(node)) {
    if (part === 'typeAnnotation' || part === 'returnType' || part === 'typeParameters' || part === 'typeArguments') continue;
    for (const child of Array.isArray(value) ? value : [value]) if (isNode(child)) found.push(child);
  }
  return found.sort((a, b) => a.start - b.start);
}

const contains = (node: Node, types: readonly string[]): boolean => types.includes(node.type) || childrenOf(node).some((child) => contains(child, types));
const nameOf = (node: unknown): string | undefined => (isNode(node) ? ((node['name'] ?? node['value']) as string | undefined) : undefined);
const isText = (node: Node): boolean => (node.type === 'Literal' && typeof node['value'] === 'string') || node.type === 'TemplateLiteral';
const unwrapped = (node: Node): Node => (node.type === 'ParenthesizedExpression' || typeWrappers.has(node.type) ? unwrapped(node['expression'] as Node) : node);

const loops = new Set(['ForStatement', 'ForInStatement', 'ForOfStatement', 'WhileStatement', 'DoWhileStatement']);

/**
 * The text with a counter in every loop, and, where `firstId` is given, with its mutants. The functions that the text
 * then calls (`$b`, `$v` and so on) are those of `mutant-switch.ts`.
 */
export function findMutants(source: string, file: string, firstId?: number): MutatedFile {
  const mutants: Mutant[] = [];
  const lines = source.split('\n');
  const lineStarts = lines.reduce<number[]>((starts, line) => [...starts, starts.at(-1)! + line.length + 1], [0]);

  /** Several changes of one place have numbers that follow each other; the first is given back. */
  const add = (at: number, ...changes: readonly string[]): number => {
    const line = lineStarts.findLastIndex((start) => start <= at);
    const site = firstId! + mutants.length;
    changes.forEach((change, i) => mutants.push({ id: site + i, site, file, line: line + 1, change, text: lines[line]!.trim() }));
    return site;
  };
  const short = (node: Node): string => {
    const text = source.slice(node.start, node.end).replace(/\s+/g, ' ');
    return text.length > 60 ? text.slice(0, 57) + '...' : text;
  };

  const program = parseAst(source, { lang: 'ts' }) as unknown as Node;
  return { code: plain({ ...program, start: 0, end: source.length }), mutants };

  /** The node's own text, its children rendered. */
  function plain(node: Node): string {
    let text = '';
    let at = node.start;
    for (const child of childrenOf(node)) {
      if (child.start < at) continue;
      text += source.slice(at, child.start) + render(child);
      at = child.end;
    }
    return text + source.slice(at, node.end);
  }

  function render(node: Node): string {
    if (node.type === 'ImportDeclaration' || node.type === 'ExportAllDeclaration') return source.slice(node.start, node.end);
    if (node.type.startsWith('TS')) {
      if (!typeWrappers.has(node.type)) return source.slice(node.start, node.end);
      const inner = node['expression'] as Node;
      return source.slice(node.start, inner.start) + render(inner) + source.slice(inner.end, node.end);
    }
    if (loops.has(node.type)) return loop(node);
    if (firstId === undefined) return plain(node);
    switch (node.type) {
      case 'TemplateLiteral':
        return source.slice(node.start, node.end);
      case 'Property':
      case 'PropertyDefinition':
        return property(node);
      case 'BinaryExpression':
        return binary(node);
      case 'LogicalExpression':
        return logical(node);
      case 'AssignmentExpression':
        return assignment(node);
      case 'UnaryExpression':
        return unary(node);
      case 'IfStatement':
      case 'ConditionalExpression':
        return condition(node);
      case 'MemberExpression':
        return member(node);
      case 'Literal':
        return literal(node);
      default:
        return plain(node);
    }
  }

  function loop(node: Node): string {
    const body = node['body'] as Node;
    const head = plain({ ...node, body: undefined, end: body.start });
    const rest = render(body);
    const counted = body.type === 'BlockStatement' ? `{ $t();${rest.slice(1)}` : `{ $t(); ${rest} }`;
    // A do loop has its condition behind the body.
    const tail = node.type === 'DoWhileStatement' ? plain({ ...node, body: undefined, start: body.end }) : '';
    return (node.type === 'DoWhileStatement' ? 'do ' : head) + counted + tail;
  }

  function property(node: Node): string {
    const key = node['key'] as Node;
    const value = node['value'] as Node | null;
    if (value === null || key.start === value.start) return plain(node);
    const name = node['computed'] === true ? undefined : nameOf(key);
    if (name !== undefined && forPeople.has(name) && value.type !== 'FunctionExpression') return source.slice(node.start, node.end);
    const head = node['computed'] === true ? source.slice(node.start, key.start) + render(key) + source.slice(key.end, value.start) : source.slice(node.start, value.start);
    return head + render(value) + source.slice(value.end, node.end);
  }

  function binary(node: Node): string {
    const operator = node['operator'] as string;
    const left = node['left'] as Node;
    const right = node['right'] as Node;
    const others = comparison[operator] ?? (arithmetic[operator] === undefined ? [] : [arithmetic[operator]]);
    const joinsText = operator === '+' && (isText(unwrapped(left)) || isText(unwrapped(right)));
    if (others.length === 0 || joinsText) return plain(node);
    const id = add(left.end, ...others.map((other) => `${short(node)} → ${other}`));
    return `$b(${id}, '${operator}', (${render(left)}), (${render(right)})${others.map((other) => `, '${other}'`).join('')})`;
  }

  function logical(node: Node): string {
    const operator = node['operator'] as string;
    const left = node['left'] as Node;
    const right = node['right'] as Node;
    // The right side goes into a function of its own, where neither of these may stand.
    if (operator === '??' || contains(right, ['YieldExpression', 'AwaitExpression'])) return plain(node);
    const id = add(left.end, `${short(node)} → ${operator === '&&' ? '||' : '&&'}`);
    return `$l(${id}, '${operator}', (${render(left)}), () => (${render(right)}))`;
  }

  function assignment(node: Node): string {
    const operator = (node['operator'] as string).slice(0, -1);
    const left = node['left'] as Node;
    const right = node['right'] as Node;
    const other = arithmetic[operator];
    const simple = left.type === 'Identifier' || (left.type === 'MemberExpression' && left['computed'] === false && !contains(left, ['CallExpression', 'UpdateExpression']));
    if (other === undefined || !simple || isText(unwrapped(right))) return plain(node);
    const id = add(left.end, `${short(left)} ${operator}= ${short(right)} → ${other}=`);
    const target = source.slice(left.start, left.end);
    return `${target} = $b(${id}, '${operator}', ${target}, (${render(right)}), '${other}')`;
  }

  function unary(node: Node): string {
    const operator = node['operator'] as string;
    const argument = node['argument'] as Node;
    if (operator !== '!' && operator !== '-') return plain(node);
    const id = add(node.start, `${short(node)} → ${short(argument)}`);
    return `$u(${id}, '${operator}', (${render(argument)}))`;
  }

  function condition(node: Node): string {
    const test = node['test'] as Node;
    const inner = unwrapped(test);
    // The opposite of a comparison and of a `!` is already among their own changes.
    const covered = (inner.type === 'BinaryExpression' && comparison[inner['operator'] as string] !== undefined) || (inner.type === 'UnaryExpression' && inner['operator'] === '!');
    const id = covered ? undefined : add(test.start, `${short(test)} → !(${short(test)})`);
    const tested = id === undefined ? render(test) : `$n(${id}, (${render(test)}))`;
    return source.slice(node.start, test.start) + tested + plain({ ...node, test: undefined, start: test.end });
  }

  function member(node: Node): string {
    const object = node['object'] as Node;
    const name = node['computed'] === true ? undefined : nameOf(node['property']);
    if (name === undefined || (node['property'] as Node).type !== 'Identifier') return plain(node);
    const math = nameOf(object) === 'Math' ? swappedMath[name] : undefined;
    if (math !== undefined) return `$v(${add(node.start, `Math.${name} → Math.${math}`)}, Math.${name}, Math.${math})`;
    const bracket = (other: string): string => `${render(object)}${node['optional'] === true ? '?.' : ''}[$v(${add(node.end, `.${name} → .${other}`)}, '${name}', '${other}')]`;
    if (Object.hasOwn(swappedQuantifier, name)) return bracket(swappedQuantifier[name]!);
    // The two ends of an amount.
    if ((name === 'low' || name === 'high') && object.type !== 'ThisExpression') return bracket(swappedWord[name]!);
    return plain(node);
  }

  function literal(node: Node): string {
    const value = node['value'];
    if (typeof value === 'boolean') return `$v(${add(node.start, `${value} → ${!value}`)}, ${value}, ${!value})`;
    if (typeof value === 'string' && Object.hasOwn(swappedWord, value)) {
      return `$v(${add(node.start, `'${value}' → '${swappedWord[value]}'`)}, '${value}', '${swappedWord[value]}')`;
    }
    if (typeof value !== 'number') return source.slice(node.start, node.end);
    const others = value === 0 ? [1] : [value + 1, 0];
    const id = add(node.start, ...others.map((other) => `${source.slice(node.start, node.end)} → ${other}`));
    return `$v(${id}, ${value}, ${others.join(', ')})`;
  }
}
