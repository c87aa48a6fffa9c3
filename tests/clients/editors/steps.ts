export type Step = (name: string, run: () => Promise<unknown>) => Promise<void>;

/** Counts what a client showed. A step that fails ends that client, since what follows would only fail with it. */
export class Steps {
  passed = 0;
  failed = 0;

  async client(client: string, run: (step: Step) => Promise<void>): Promise<void> {
    const started = performance.now();
    const say = (word: string, name: string): void => console.log(`${word} ${client}: ${name} (${((performance.now() - started) / 1000).toFixed(1)} s)`);
    let failedStep = '';
    const step: Step = async (name, test) => {
      try {
        await test();
        this.passed += 1;
        say('ok', name);
      } catch (error) {
        failedStep = name;
        throw error;
      }
    };
    try {
      await run(step);
    } catch (error) {
      this.failed += 1;
      say('not ok', failedStep === '' ? 'could not be run' : failedStep);
      console.log(error);
    }
  }
}
