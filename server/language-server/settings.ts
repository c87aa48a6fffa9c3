import { readDay, type DayNumber } from '../../src-core/model/day.ts';

type Ask = <T>(method: string, params: unknown) => Promise<T>;

const asOfIn = (settings: unknown): string | undefined => {
  const check = (settings as { check?: { asOf?: unknown } } | null | undefined)?.check;
  return typeof check?.asOf === 'string' ? check.asOf : undefined;
};

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
  readonly #asked = new Map<string, Promise<string>>();
  #sent = '';

  /** `ask` is left out for a client that has no settings to ask for. */
  constructor(ask: Ask | undefined, log: (text: string) => void) {
    this.#ask = ask;
    this.#log = log;
  }

  /** Settings have changed. Some clients send them, others wait to be asked. */
  changed(sent: unknown): void {
    this.#asked.clear();
    const asOf = asOfIn((sent as { linewright?: unknown } | undefined)?.linewright);
    if (asOf !== undefined) this.#sent = asOf;
  }

  async day(folderUri: string | undefined): Promise<DayNumber> {
    const key = folderUri ?? '';
    let asked = this.#asked.get(key);
    if (asked === undefined) {
      asked = this.#request(folderUri);
      this.#asked.set(key, asked);
    }
    const text = await asked;
    return text === '' ? today() : (readDay(text) ?? today());
  }

  async #request(folderUri: string | undefined): Promise<string> {
    let text = this.#sent;
    if (this.#ask !== undefined) {
      const item = { section: 'linewright', ...(folderUri === undefined ? {} : { scopeUri: folderUri }) };
      const answer = await this.#ask<unknown>('workspace/configuration', { items: [item] }).catch(() => undefined);
      text = asOfIn(Array.isArray(answer) ? answer[0] : undefined) ?? text;
    }
    if (text !== '' && readDay(text) === undefined) this.#log(`linewright.check.asOf is ${JSON.stringify(text.slice(0, 40))}, which is not a date such as 2026-06-21; today is taken instead`);
    return text;
  }
}
