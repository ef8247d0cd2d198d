import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { securityPolicy } from '../../src/report/security-policy.ts';

const sha256 = (text: string) => createHash('sha256').update(text).digest('base64');

describe('securityPolicy', () => {
  it('lets nothing in but data and the named style and script', () => {
    // Digest of the example in the CSP level 3 recommendation, "alert('Hello, world.');" (W3C, section 2.3.1).
    const policy = securityPolicy('', ["alert('Hello, world.');"], sha256);
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
  });

  it('lets in several scripts, and sound from beside the file only where it lies there', () => {
    expect(securityPolicy('', ['a', 'b'], sha256)).toContain(
      `script-src 'sha256-${sha256('a')}' 'sha256-${sha256('b')}'`,
    );
    expect(securityPolicy('', [], sha256)).toContain('media-src data:;');
    expect(securityPolicy('', [], sha256, true)).toContain("media-src 'self' file:;");
  });

  it('forbids scripts where there is none', () => {
    expect(securityPolicy('', [], sha256)).toContain("script-src 'none'");
  });
});
