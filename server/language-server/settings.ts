import { readDay, type DayNumber } from '../../src-core/model/day.ts';

type Ask = <T>(method: string, params: unknown) => Promise<T>;

/** What is set; undefined for what was not said. */
interface Said {
  readonly asOf: string | undefined;
  readonly lenses: boolean | undefined;
}

function readSaid(settings: unknown, log: (text: string) => void): Said {
  const read = (value: unknown, name: string, type: keyof typeof typeWords): unknown => {
    if (value === undefined || value === null || typeof value === type) return value ?? undefined;
    log(`${name} is ${JSON.stringify(value).slice(0, 40)}, which is not ${typeWords[type]}; it is not taken`);
    return undefined;
  };
  const { check, codeLens } = (read(settings, 'linewright', 'object') ?? {}) as { readonly check?: unknown; readonly codeLens?: unknown };
  const { asOf } = (read(check, 'linewright.check', 'object') ?? {}) as { readonly asOf?: unknown };
  const { enabled } = (read(codeLens, 'linewright.codeLens', 'object') ?? {}) as { readonly enabled?: unknown };
  return { asOf: read(asOf, 'linewright.check.asOf', 'string') as string | undefined, lenses: read(enabled, 'linewright.codeLens.enabled', 'boolean') as boolean | undefined };
}

const typeWords = { object: 'an object', string: 'text', boolean: '`true` or `false`' } as const;

const turned = Symbol('turned');

/** Today by the clock and the time zone of this machine. The core reads no clock; it is told the day. */
export function today(): DayNumber {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, '0');
  return readDay(`${String(now.getFullYear()).padStart(4, '0')}-${two(now.getMonth() + 1)}-${two(now.getDate())}`)!;
}

/** The day that rigs are judged on: what the settings of a folder say, else today. */
export class Settings {
  readonly #ask: Ask | undefined;
  readonly #log: (text: string) => void;
  readonly #asked = new Map<string, Promise<Said>>();
  /** Called when settings change: who still waits for an answer from before asks again. */
  #turn: () => void = () => undefined;
  #turning = this.#nextTurn();
  #sent: Said = { asOf: undefined, lenses: undefined };

  /** `ask` is left out for a client that has no settings to ask for. */
  constructor(ask: Ask | undefined, log: (text: string) => void) {
    this.#ask = ask;
    this.#log = log;
  }

  /** Settings have changed. Some clients send them, others wait to be asked. */
  changed(sent: unknown): void {
    this.#asked.clear();
    this.#turn();
    const said = readSaid((sent as { linewright?: unknown } | undefined)?.linewright, this.#log);
    this.#sent = { asOf: said.asOf ?? this.#sent.asOf, lenses: said.lenses ?? this.#sent.lenses };
  }

  async day(folderUri: string | undefined): Promise<DayNumber> {
    const text = (await this.#said(folderUri)).asOf ?? '';
    return text === '' ? today() : (readDay(text) ?? today());
  }

  /** Whether lines and pulls carry what they come to above them. Off until somebody wants it. */
  async showsLenses(folderUri: string | undefined): Promise<boolean> {
    return (await this.#said(folderUri)).lenses ?? false;
  }

  #nextTurn(): Promise<typeof turned> {
    return new Promise((done) => {
      this.#turn = () => {
        done(turned);
        this.#turning = this.#nextTurn();
      };
    });
  }

  #said(folderUri: string | undefined): Promise<Said> {
    const key = folderUri ?? '';
    let asked = this.#asked.get(key);
    if (asked === undefined) {
      asked = this.#request(folderUri);
      this.#asked.set(key, asked);
    }
    return asked;
  }

  async #request(folderUri: string | undefined): Promise<Said> {
    let said = this.#sent;
    if (this.#ask !== undefined) {
      const item = { section: 'linewright', ...(folderUri === undefined ? {} : { scopeUri: folderUri }) };
      const answer = await Promise.race([this.#ask<unknown>('workspace/configuration', { items: [item] }).catch(() => undefined), this.#turning]);
      if (answer === turned) return this.#said(folderUri);
      const own = readSaid(Array.isArray(answer) ? answer[0] : undefined, this.#log);
      said = { asOf: own.asOf ?? said.asOf, lenses: own.lenses ?? said.lenses };
    }
    const text = said.asOf ?? '';
    if (text !== '' && readDay(text) === undefined) this.#log(`linewright.check.asOf is ${JSON.stringify(text.slice(0, 40))}, which is not a date such as 2026-06-21; today is taken instead`);
    return said;
  }
}
