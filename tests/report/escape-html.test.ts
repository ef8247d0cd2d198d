import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeHtml, outsideText } from '../../src/report/escape-html.ts';

describe('escapeHtml', () => {
  it('turns the five characters that HTML reads into entities', () => {
    expect(escapeHtml('<b>&"')).toBe('&lt;b&gt;&amp;&quot;');
    expect(escapeHtml("'</script><!--")).toBe('&#39;&lt;/script&gt;&lt;!--');
  });

  it('leaves out what turns the direction of writing, control characters and half surrogates', () => {
    expect(escapeHtml('take\u202Egpj.exe')).toBe('takegpj.exe');
    expect(escapeHtml('a\u2066b\u2069c\u0000d\u001be\u0085f')).toBe('abcdef');
    expect(escapeHtml('x\ud83dy')).toBe('xy');
    expect(escapeHtml('line\tone\nline two 🥁')).toBe('line\tone\nline two 🥁');
  });

  it('never lets a reading character through', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const safe = escapeHtml(text);
        expect(safe).not.toMatch(/[<>"']/);
        expect(safe.replace(/&(amp|lt|gt|quot|#39);/g, '')).not.toContain('&');
      }),
    );
  });
});

describe('outsideText', () => {
  it('shortens without cutting an emoji or its parts', () => {
    const family = '👨‍👩‍👧';
    expect(outsideText(family.repeat(10), 4)).toBe(`<bdi>${family.repeat(3)}…</bdi>`);
    expect(outsideText('Ana', 3)).toBe('<bdi>Ana</bdi>');
    expect(outsideText('Anna', 3)).toBe('<bdi>An…</bdi>');
  });

  it('shows no more than its limit of 10,000 characters', () => {
    expect(outsideText('x'.repeat(10_000))).toBe(`<bdi>${'x'.repeat(199)}…</bdi>`);
  });
});
