import { describe, expect, it } from 'vitest';
import { faultOfError, microphoneFault } from '../../../src/page/recording/microphone-fault.ts';

describe('faultOfError', () => {
  // Names as the Media Capture standard gives them (W3C, Media Capture and Streams, section 10.2), from memory.
  it.each([
    ['NotAllowedError', 'denied'],
    ['NotFoundError', 'none'],
    ['NotReadableError', 'in-use'],
    ['OverconstrainedError', 'gone'],
    ['TypeError', 'not-opened'],
  ])('tells %s as %s', (name, code) => {
    expect(faultOfError(new DOMException('', name)).code).toBe(code);
  });

  it('says what to do, whatever was thrown', () => {
    for (const thrown of [undefined, null, 'no', new Error('x')]) {
      const { code, sentence } = faultOfError(thrown);
      expect(code).toBe('not-opened');
      expect(sentence).toMatch(/^[A-Z].*\.$/);
    }
    expect(microphoneFault('insecure').sentence).toContain('https://');
  });
});
