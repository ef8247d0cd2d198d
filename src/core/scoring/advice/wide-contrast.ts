import { figureFacts } from './figure-facts.ts';
import type { AdviceRule } from './finding.ts';
import { shortfalls } from './shortfall.ts';

/** Accents stand further above the taps than the band asks. */
export const wideContrast: AdviceRule = (input) =>
  shortfalls(input, 'accent-to-tap-ratio').flatMap(({ scope, perfect, outcome, lost }) =>
    typeof perfect === 'number' || outcome.value <= perfect.max
      ? []
      : [
          {
            code: 'contrast-too-wide',
            facts: { ...figureFacts(outcome, scope), wantedDb: perfect.max },
            strokes: outcome.pointsAt,
            lost,
          },
        ],
  );
