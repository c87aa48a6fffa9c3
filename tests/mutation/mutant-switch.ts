/** Thrown in a loop that runs on far beyond what it does without a mutant. */
export class RunsOn extends Error {
  override readonly name = 'RunsOn';
}

type Logical = () => unknown;

const results: Readonly<Record<string, (a: never, b: never) => unknown>> = {
  '+': (a: number, b: number) => a + b,
  '-': (a: number, b: number) => a - b,
  '*': (a: number, b: number) => a * b,
  '/': (a: number, b: number) => a / b,
  '%': (a: number, b: number) => a % b,
  '**': (a: number, b: number) => a ** b,
  '<<': (a: number, b: number) => a << b,
  '>>': (a: number, b: number) => a >> b,
  '&': (a: number, b: number) => a & b,
  '|': (a: number, b: number) => a | b,
  '<': (a: number, b: number) => a < b,
  '<=': (a: number, b: number) => a <= b,
  '>': (a: number, b: number) => a > b,
  '>=': (a: number, b: number) => a >= b,
  '===': (a: unknown, b: unknown) => a === b,
  '!==': (a: unknown, b: unknown) => a !== b,
};

/** Holds which mutant is active and notes which were passed. Its functions are what mutated text calls. */
export class MutantSwitch {
  /** 0: none, the program as it is. */
  active = 0;
  ticks = 0;
  /** A loop that goes round more often than this is stopped. */
  mostTicks = Infinity;
  /** A time of `performance.now()` after which loops are stopped. */
  latest = Infinity;
  readonly passed: Uint8Array;

  constructor(mutants: number) {
    this.passed = new Uint8Array(mutants + 1);
  }

  /** Names under which mutated text knows the functions, in the order of `functions`. */
  static readonly names = ['$b', '$l', '$u', '$n', '$v', '$t'] as const;

  readonly functions = [
    (id: number, operator: string, a: never, b: never, first: string, second?: string): unknown => {
      this.passed[id] = 1;
      const chosen = this.active === id ? first : second !== undefined && this.active === id + 1 ? second : operator;
      return results[chosen]!(a, b);
    },
    (id: number, operator: string, a: unknown, b: Logical): unknown => {
      this.passed[id] = 1;
      return (operator === '&&') !== (this.active === id) ? a && b() : a || b();
    },
    (id: number, operator: string, a: never): unknown => {
      this.passed[id] = 1;
      if (operator === '!') return this.active === id ? Boolean(a) : !a;
      return this.active === id ? a : -a;
    },
    (id: number, a: unknown): boolean => {
      this.passed[id] = 1;
      return this.active === id ? !a : Boolean(a);
    },
    (id: number, own: unknown, first: unknown, second: unknown): unknown => {
      this.passed[id] = 1;
      return this.active === id ? first : second !== undefined && this.active === id + 1 ? second : own;
    },
    (): void => {
      this.ticks++;
      if (this.ticks > this.mostTicks || (this.ticks % 1024 === 0 && performance.now() > this.latest)) throw new RunsOn('a loop runs on');
    },
  ] as const;
}
