import { EmbeddedActionsParser } from 'chevrotain';
import { expect, test } from 'vitest';

// The parser ends the recording of its grammar in its own way, sooner than the library does. The library must ask it to.
test('the library ends its recording by a method of the parser', () => {
  let ended = 0;
  class Empty extends EmbeddedActionsParser {
    constructor() {
      super([], { skipValidations: true });
      this.performSelfAnalysis();
    }

    protected disableRecording(): void {
      ended++;
      const library = EmbeddedActionsParser.prototype as unknown as { disableRecording(this: Empty): void };
      library.disableRecording.call(this);
    }
  }
  expect(new Empty()).toBeDefined();
  expect(ended).toBe(1);
});
