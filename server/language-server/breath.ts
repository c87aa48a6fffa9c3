/** Long work lets waiting messages in after this long. */
const breath_ms = 10;

/** Does something when the messages that wait were taken. */
export const behind: (work: () => void) => void = typeof setImmediate === 'function' ? setImmediate : setTimeout;

export const rest = (): Promise<void> => new Promise(behind);

/** Keeps long work from holding up answers. */
export class Breath {
  #since = performance.now();

  /** Asked between two pieces of the work; takes time only when the last breath was long ago. */
  async taken(): Promise<void> {
    if (performance.now() - this.#since < breath_ms) return;
    await rest();
    this.#since = performance.now();
  }
}
