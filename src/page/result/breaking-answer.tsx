import { breakRange, breakWords, stopWords } from '../../core/result/breaking-words.ts';
import { dimensionName } from '../../core/result/names.ts';
import type { BreakingPoints } from '../../core/result/take-result.ts';

/** At which tempo each dimension breaks, with the range it likely lies in. */
export function BreakingAnswer({ breaking }: { readonly breaking: BreakingPoints }) {
  return (
    <>
      <dl class="breaking-answer">
        {breaking.dimensions.map((one) => (
          <div key={one.id}>
            <dt>{dimensionName(one.id)}</dt>
            <dd>
              {breakWords(one)} <span class="quiet">({breakRange(one)})</span>
            </dd>
          </div>
        ))}
      </dl>
      <p class="quiet">{stopWords(breaking)}</p>
    </>
  );
}
