import type { ClickTimes } from '../click/click-times.ts';
import type { Source } from '../signal/source.ts';
import { steadyLevel, withoutLevel } from '../signal/steady-level.ts';
import { atGain, peakFollower, usualGain } from '../signal/usual-gain.ts';
import { partOfWork, type WorkTold } from '../signal/work-told.ts';
import { type AttackSearch, attackSearch } from './attack-search.ts';
import { settleHearing } from './settle-hearing.ts';
import type { Hearing, Stroke } from './stroke.ts';

/** A recording being listened to while it comes. */
export interface Listening {
  /**
   * Goes on with a recording that is the same as before and longer. Attacks decided since, about 0.1 s after they were
   * struck, in order: everything with an attack, clicks of a metronome too; what the end makes of them isn't known yet.
   */
  goOn(recording: Source): readonly Stroke[];
  /** The recording is over: everything heard in it, to the last digit what is heard in it at once. `put`: clicks put out meanwhile. */
  end(recording: Source, tell?: WorkTold, put?: readonly ClickTimes[]): Hearing;
}

/** About how much of the work is the first search where clicks make a second one needed. */
const shareOfFirst = 0.5;
/** A search that has to begin anew catches up by so many s of the recording at a time, beside the one before. */
const catchUpSeconds = 3;
/** s of a recording after which its steady level is looked at again; twice as long each time up to the second. */
const levelEvery = { from: 1, most: 8 };
/** A search that takes over from another tells only what is later than this after the last attack told, s. */
const sameAttack = 0.005;

interface Pass {
  /** How the recording is brought to its usual loudness and round nothing. */
  readonly level: number;
  readonly gain: number;
  readonly search: AttackSearch;
}

/**
 * Begins to listen to a recording of one channel. The search for attacks is causal and goes along; it begins anew when
 * the recording turns out twice as loud as it was, or with another steady level. Clicks, classes and gaps are
 * settled at the end.
 *
 * @example startListening().end(source).sounds.length // 24
 */
export function startListening(): Listening {
  const peakOf = peakFollower();
  let level = 0;
  let levelDue = levelEvery.from;
  /** The search that is told of, and the one that has what is known by now. */
  let told: Pass | null = null;
  let latest: Pass | null = null;
  let last = Number.NEGATIVE_INFINITY;

  function passFor(recording: Source): Pass {
    const gain = usualGain(peakOf(recording));
    if (latest === null || latest.gain !== gain || latest.level !== level)
      latest = { level, gain, search: attackSearch(recording.sampleRate) };
    return latest;
  }
  /** What a search finds now, at the recording's own loudness. */
  function heardOn(pass: Pass, recording: Source, most?: number): Stroke[] {
    const gainDb = 20 * Math.log10(pass.gain);
    const attacks = pass.search.goOn(heardBy(pass, recording), most);
    return attacks.map((attack) => ({ ...attack, levelDb: attack.levelDb - gainDb }));
  }
  const heardBy = ({ level, gain }: Pass, recording: Source) => atGain(withoutLevel(recording, level), gain);

  return {
    goOn(recording) {
      const seconds = recording.length / recording.sampleRate;
      if (seconds >= levelDue) {
        level = steadyLevel(recording);
        levelDue = seconds + Math.min(seconds, levelEvery.most);
      }
      const pass = passFor(recording);
      told ??= pass;
      const attacks = heardOn(told, recording);
      if (pass !== told) {
        const caughtUp = heardOn(pass, recording, catchUpSeconds);
        if (pass.search.seconds() >= told.search.seconds()) {
          told = pass;
          attacks.push(...caughtUp);
        }
      }
      // A search that takes over finds again what the one before has told.
      return attacks.filter(({ time }) => {
        const isNew = time > last + sameAttack;
        if (isNew) last = time;
        return isNew;
      });
    },
    end(recording, tell, put) {
      level = steadyLevel(recording);
      const pass = passFor(recording);
      const source = heardBy(pass, recording);
      const found = pass.search.end(source, partOfWork(tell, 0, shareOfFirst));
      const { sounds, noiseFloorDb, click } = settleHearing(
        source,
        found,
        partOfWork(tell, shareOfFirst, 1),
        put,
      );
      const gainDb = 20 * Math.log10(pass.gain);
      return {
        sounds: sounds.map((sound) => ({ ...sound, levelDb: sound.levelDb - gainDb })),
        noiseFloorDb: noiseFloorDb - gainDb,
        click: click && { ...click, levelDb: click.levelDb - gainDb },
      };
    },
  };
}
