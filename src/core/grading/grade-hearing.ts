import type { Alignment } from '../alignment/alignment.ts';
import { layOut } from '../exercise/lay-out.ts';
import type { Sheet } from '../exercise/sheet.ts';
import { measureTake } from '../measures/index.ts';
import { performanceOf } from '../measures/performance.ts';
import type { Hearing } from '../onsets/stroke.ts';
import { checkRecording } from '../recording-check/check-recording.ts';
import { refuseSpoiled, spoiltIds } from '../recording-check/refuse-spoiled.ts';
import type { Reason, TakeResult } from '../result/take-result.ts';
import { takeResultVersion } from '../result/take-result-version.ts';
import { advise } from '../scoring/advise.ts';
import { cannotTell } from '../scoring/cannot-tell.ts';
import { handRatioGap } from '../scoring/hand-ratio-gap.ts';
import type { Rubric } from '../scoring/rubric.ts';
import { steady } from '../scoring/rubrics/steady.ts';
import { scoreTake } from '../scoring/score-take.ts';
import { envelope } from '../signal/envelope.ts';
import { finiteSource } from '../signal/finite-source.ts';
import { envelopeOfPeaks } from '../signal/peak-course.ts';
import type { Source } from '../signal/source.ts';
import type { WorkTold } from '../signal/work-told.ts';
import { breakingPoints } from './breaking-points.ts';
import { buzzesAsOne } from './buzzes.ts';
import { clickToHoldAgainst, type PlayedClick } from './click-to-hold-against.ts';
import { apartFromOthers } from './company.ts';
import { compareToModel, withoutSpoilt } from './compare-to-model.ts';
import { countedAlignment } from './counted-alignment.ts';
import type { GatheredSound } from './gathered-sound.ts';
import { whyNotGradable } from './gradable.ts';
import { handsBySound, withHeardHands } from './hands-by-sound.ts';
import type { PlayedModel } from './played-model.ts';
import { gapWarnings, type RecordingGap, strokesOutsideGaps, withUnheard } from './recording-gaps.ts';
import { risingAlignment } from './rising-alignment.ts';
import { segmentList } from './segment-list.ts';
import { silencesOf } from './silences-of.ts';
import { silentClickWarnings } from './silent-click-warnings.ts';
import { slotColumns } from './slot-columns.ts';
import { strokeColumns } from './stroke-columns.ts';
import { takeWarnings } from './take-warnings.ts';
import { tempoColumns } from './tempo-columns.ts';
import { turnedAccentsFound } from './turned-accents-found.ts';
import { warningsNotFound } from './warnings-not-found.ts';

export interface GradeOptions {
  /** Name of the recording, shown to people. */
  readonly name?: string;
  readonly sha256?: string | null;
  readonly rubric?: Rubric;
  /** The player noted pain or discomfort: no advice to go faster. */
  readonly discomfort?: boolean;
  /** A take to hold this one against. */
  readonly model?: PlayedModel;
  /** What is known of the recording before it is listened to, such as that its end is missing. */
  readonly warnings?: readonly Reason[];
  /** The click that the tool played while it recorded, where it did. */
  readonly playedClick?: PlayedClick;
  /** Where samples were lost while recording; strokes due there aren't counted as missed. */
  readonly gaps?: readonly RecordingGap[];
  /** False where there is no recording to judge, as for the notes of an electronic pad. */
  readonly check?: boolean;
  /** What was gathered of a recording of one channel while it came; every sample of it is a number. */
  readonly gathered?: GatheredSound;
  /** Hears how far the work has come. */
  readonly tell?: WorkTold;
}

/** Slices of the recording's outline in a result: more than a picture is wide in px. Our judgement. */
const envelopeSlices = 1200;

/**
 * Grades what was heard in a recording against a sheet. A take that can't be graded comes back with the reason and
 * without measures. Times of the hearing count from the source's first sample.
 *
 * @example gradeHearing(source, hearStrokes(source), sheet).grading // { state: 'graded' }
 */
export function gradeHearing(
  source: Source,
  hearing: Hearing,
  sheet: Sheet,
  options: GradeOptions = {},
): TakeResult {
  const {
    name = 'recording',
    sha256 = null,
    rubric = steady,
    discomfort = false,
    gaps = [],
    gathered,
    playedClick,
  } = options;
  const { sampleRate } = source;
  const duration = source.length / sampleRate;
  const slots = layOut(sheet);
  const shape = gathered
    ? envelopeOfPeaks(source, envelopeSlices, gathered.peaks)
    : envelope(finiteSource(source), envelopeSlices);
  const pads = hearing.sounds.filter((sound) => sound.sound === 'pad');
  const all = strokesOutsideGaps(pads, gaps, sampleRate);
  const { click, warnings: clickWarnings } = clickToHoldAgainst(hearing.click, playedClick);
  const silences = silencesOf(playedClick);
  const asked = { slots, sheet, strokes: all, click, silences };
  const played = buzzesAsOne(asked, risingAlignment(asked, options.tell));
  const { strokes, others, laid } = apartFromOthers({ ...asked, strokes: played.strokes }, played.laid);
  const question = { ...asked, strokes };
  const perform = (one: Alignment) =>
    performanceOf({ ...question, alignment: withUnheard(one, question, gaps, sampleRate, duration) });
  const written = perform(countedAlignment(question, laid, perform));
  const evidence = handsBySound(written, strokes);
  const performance = withHeardHands(written, evidence, perform);
  const { alignment } = performance;
  const confirmed = evidence.says === 'confirmed' && performance.hands === 'as-written';
  const read = gathered && { channels: [gathered.features] };
  const found =
    options.check === false
      ? null
      : checkRecording({ source, hearing, performance, others, gaps, playedClick, ...read });
  const reason = whyNotGradable({ peak: Math.max(...shape), hearing, slots, alignment });

  const warnings = [
    ...warningsNotFound(options.warnings ?? [], found ?? []),
    ...gapWarnings(gaps, sampleRate, alignment.unheard),
    ...clickWarnings,
    ...silentClickWarnings(click, performance.strokes),
  ];
  const lines = sheet.lines.map(({ beats: _, ...line }) => line);
  const segments = segmentList(alignment, strokes);
  const described = {
    schema: 'evenhand-take-result',
    version: takeResultVersion,
    recording: {
      name,
      sha256,
      sampleRate,
      channels: source.channels,
      duration,
      noiseFloorDb: hearing.noiseFloorDb,
      envelope: shape,
      ...(found === null ? {} : { check: found }),
    },
    sheet: { title: sheet.title, lines },
    reference: { kind: alignment.reference },
    strokes: strokeColumns(strokes, performance),
    slots: slotColumns(slots, alignment),
    segments,
    tempo: tempoColumns(performance),
    hands: confirmed ? 'confirmed-by-sound' : performance.hands,
  } as const;
  if (reason !== null) {
    const grading = { state: 'not-gradable', reason } as const;
    const nothing = { measures: [], scores: null, advice: [], cannotTell: [] };
    return { ...described, ...nothing, grading, warnings };
  }

  const measured = measureTake(performance, options.tell);
  const findings = found ?? [];
  const spoilt = spoiltIds(findings);
  const measures = refuseSpoiled([...measured, handRatioGap(measured, performance.hands)], findings);
  const scored = scoreTake({ measures, lines, strokes: performance.strokes.length, rubric });
  const scores = scored.state === 'scored' ? scored.scores : null;
  const told = takeWarnings({ sheet, slots, alignment, segments });
  const farOff = told.find(({ code }) => code === 'tempo-far-off');
  const tempos = new Set(lines.map((line) => line.bpm));
  const bpm = tempos.size === 1 ? (lines[0]?.bpm ?? null) : null;
  const breaking = breakingPoints({ performance, lines, slots: described.slots, rubric, findings });
  const result: TakeResult = {
    ...described,
    grading: { state: 'graded' },
    measures,
    scores,
    ...(breaking.length === 0 ? {} : { breaking }),
    advice: advise({
      measures,
      lines,
      rubric,
      scores,
      bpm,
      played: (farOff?.facts.played as number | undefined) ?? null,
      discomfort,
      turns: spoilt.has('turned-accents') ? [] : turnedAccentsFound(performance),
      breaking,
    }),
    warnings: [...warnings, ...told],
    cannotTell: cannotTell({
      measures,
      lines,
      rubric,
      scored,
      reference: alignment.reference,
      hands: performance.hands,
    }),
  };
  const { model } = options;
  return model === undefined
    ? result
    : { ...result, model: withoutSpoilt(compareToModel(result, model), findings) };
}
