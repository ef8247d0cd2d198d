import type { ChartConfiguration } from 'chart.js';
import { rounded } from '../../core/result/figures.ts';
import type { ChartTable } from '../chart-entry.ts';
import { plugins, scale, still } from '../frame.ts';
import type { Look } from '../look.ts';

/** Timing spread against tempo, take by take: how fast at which evenness. */
export interface SpreadByTempo {
  readonly kind: 'spread-by-tempo';
  readonly id: string;
  readonly question: string;
  readonly takes: readonly {
    readonly day: string;
    readonly bpm: number;
    /** Per cent of a partial, with its 95 % interval. */
    readonly spread: number;
    readonly low: number;
    readonly high: number;
    /** Played in the last four weeks. */
    readonly recent: boolean;
  }[];
}

/** Takes of the last four weeks full and round, earlier ones hollow and pointed. */
export function spreadByTempoChart(data: SpreadByTempo, look: Look): ChartConfiguration<'scatter'> {
  const { palette } = look;
  const { takes } = data;
  const tempos = takes.map(({ bpm }) => bpm);
  const marks = (recent: boolean, label: string) => ({
    label,
    data: takes
      .filter((take) => take.recent === recent)
      .map(({ bpm, spread, low, high, day }) => ({
        x: bpm,
        y: spread,
        words: `${day}, ${rounded(bpm, 0)} BPM: ${rounded(spread)} % of a partial (${rounded(low)} to ${rounded(high)})`,
      })),
    pointStyle: (recent ? 'circle' : 'triangle') as 'circle' | 'triangle',
    pointRadius: 6,
    borderWidth: 1.5,
    borderColor: recent ? palette.first : palette.second,
    backgroundColor: recent ? palette.first : palette.paper,
  });
  return {
    type: 'scatter',
    data: { datasets: [marks(true, 'last four weeks'), marks(false, 'before')] },
    options: {
      ...still,
      scales: {
        x: {
          ...scale(look, 'tempo, BPM'),
          type: 'linear',
          min: Math.floor(Math.min(...tempos) - 4),
          max: Math.ceil(Math.max(...tempos) + 4),
        },
        y: { ...scale(look, 'timing spread, % of a partial'), min: 0 },
      },
      plugins: plugins<'scatter'>(look, data.question, ({ raw }) => (raw as { words: string }).words),
    },
  };
}

export function spreadByTempoText({ takes }: SpreadByTempo): string {
  const tempos = [...new Set(takes.map(({ bpm }) => Math.round(bpm)))].sort((a, b) => a - b);
  const parts = tempos.map((tempo) => {
    const own = takes.filter(({ bpm }) => Math.round(bpm) === tempo).map(({ spread }) => spread);
    return `${tempo} BPM: ${rounded(Math.min(...own))} to ${rounded(Math.max(...own))} %`;
  });
  return `Each mark is a take; lower is more even. ${parts.join('; ')} of a partial.`;
}

export function spreadByTempoTable({ takes }: SpreadByTempo): ChartTable {
  return {
    head: ['Day', 'Tempo', 'Timing spread', 'Likely between'],
    rows: takes.map(({ day, bpm, spread, low, high }) => [
      day,
      `${rounded(bpm, 0)} BPM`,
      `${rounded(spread)} %`,
      `${rounded(low)} to ${rounded(high)} %`,
    ]),
  };
}
