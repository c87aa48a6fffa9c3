/** The text of a number that stands for a symbol. */
export interface PutIn {
  readonly text: string;
  readonly range: boolean;
}

interface Token {
  readonly text: string;
  readonly space: boolean;
  readonly value: boolean;
}

/** Formulas are written with Latin and Greek letters: a pattern of all the world's costs more than all else here. */
export const formulaPieces = /\s*(\d+(?:\.\d+)?|[A-Za-zÀ-ÖØ-öø-ɏΑ-ω√][A-Za-zÀ-ÖØ-öø-ɏΑ-ω0-9_₀-₉]*(?:\.\.[A-Za-zÀ-ÖØ-öø-ɏΑ-ω0-9]+)?|\S)/g;
const functions = new Set(['min', 'max', 'exp', 'sin', 'cos', 'tan', 'arctan', 'arcsin', 'log', '√']);

const isNumber = (token: Token | undefined): boolean => token !== undefined && /^(\d|π|½)/.test(token.text);
const opens = (token: Token): boolean => token.text === '(' || token.text === '⌊' || token.text === '⌈' || functions.has(token.text);

/** Two things side by side are multiplied; with numbers in, the sign must be written. */
const multiplied = (before: Token | undefined, token: Token): boolean => {
  if (before === undefined) return false;
  if (token.value) return before.value || isNumber(before) || before.text === ')' || before.text === '⌋' || before.text === '⌉';
  if (before.value) return isNumber(token) || opens(token);
  return false;
};

/**
 * Puts numbers in the place of symbols: `F_n = F_1 (B + d) / ...` becomes `F_n = 42 kN × (64 mm + 10 mm) / ... = 33.1 kN`.
 * What stands behind a semicolon is a remark and is left out; what stands behind a comma says what a symbol is, and follows the result.
 */
export function putNumbersIn(formula: string, values: ReadonlyMap<string, PutIn>, result: string): string {
  const equation = formula.split(';')[0]!;
  const tokens: Token[] = [];
  let depth = 0;
  let clauseEnd: number | undefined;
  let behindEquals = false;
  for (const match of equation.matchAll(formulaPieces)) {
    const raw = match[1]!;
    if (raw === '(') depth++;
    if (raw === ')') depth--;
    if (raw === ',' && depth === 0 && clauseEnd === undefined) clauseEnd = tokens.length;
    const put = behindEquals ? values.get(raw) : undefined;
    if (raw === '=') behindEquals = true;
    const next = equation[match.index + match[0].length];
    const wrap = put !== undefined && (put.range || next === '²');
    tokens.push({ text: put === undefined ? raw : wrap ? `(${put.text})` : put.text, space: /^\s/.test(match[0]), value: put !== undefined });
  }
  const print = (part: readonly Token[]): string =>
    part.reduce((text, token, i) => text + (multiplied(part[i - 1], token) ? ' × ' : token.space && text !== '' ? ' ' : '') + token.text, '');
  const clause = print(tokens.slice(0, clauseEnd));
  const rest = clauseEnd === undefined ? '' : print(tokens.slice(clauseEnd));
  return `${clause} = ${result}${rest}`;
}
