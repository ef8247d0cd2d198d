import type { ChartType, TooltipItem } from 'chart.js';
import { clockTime } from './clock-time.ts';
import type { Look } from './look.ts';

/** Where a dataset carries a `stroke` with its points, the box over a point tells of that stroke. */
export interface StrokePoint {
  readonly x: number;
  readonly y: number;
  readonly stroke: number;
}

/** No movement, the height of its place on the page, and room for labels that stand over an edge. */
export const still = {
  animation: false as const,
  maintainAspectRatio: false,
  layout: { padding: { top: 8, right: 16, left: 4 } },
};

const font = (look: Look, weight: 'normal' | 'bold' = 'normal') => ({
  family: look.fontFamily,
  size: look.fontSize,
  weight,
});

/** A scale with its title and the look's text and grid. */
export function scale(look: Look, title: string) {
  const { palette } = look;
  return {
    title: { display: title !== '', text: title, color: palette.quiet, font: font(look) },
    ticks: { color: palette.quiet, font: font(look), maxRotation: 0 },
    grid: { color: palette.grid },
    border: { color: palette.quiet },
  };
}

/**
 * A scale of lanes beside each other, numbered from 1, each labelled under its middle; a list is a label of several
 * lines.
 */
export function laneScale(look: Look, title: string, labels: readonly (string | string[])[]) {
  const plain = scale(look, title);
  return {
    ...plain,
    type: 'linear' as const,
    min: 0.5,
    max: labels.length + 0.5,
    ticks: {
      ...plain.ticks,
      stepSize: 1,
      autoSkip: false,
      callback: (value: string | number) => labels[Number(value) - 1] ?? '',
    },
    afterBuildTicks: (axis: { ticks: { value: number }[] }) => {
      axis.ticks = labels.map((_, i) => ({ value: i + 1 }));
    },
  };
}

/** Distances between labels of time, s. */
const timeSteps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800];

/** A scale of seconds of the recording from one time to another, labelled in minutes and seconds. */
export function timeScale(look: Look, from: number, to: number) {
  const plain = scale(look, 'time in the recording');
  const margin = Math.max(0.3, 0.02 * (to - from));
  return {
    ...plain,
    type: 'linear' as const,
    min: from - margin,
    max: to + margin,
    ticks: {
      ...plain.ticks,
      stepSize: timeSteps.find((step) => step >= (to - from) / 6) ?? 3600,
      includeBounds: false,
      callback: (value: string | number) => clockTime(Number(value)),
    },
  };
}

/** What pictures have in common: question as title where asked for, legend below, no movement. */
export function plugins<T extends ChartType>(
  look: Look,
  question: string,
  words: (item: TooltipItem<T>) => string | string[],
) {
  const { palette } = look;
  return {
    title: {
      display: look.titled,
      text: question,
      color: palette.ink,
      align: 'start' as const,
      font: { ...font(look, 'bold'), size: look.fontSize + 3 },
    },
    legend: {
      position: 'bottom' as const,
      labels: { color: palette.ink, font: font(look), usePointStyle: true, boxHeight: 8, padding: 14 },
    },
    tooltip: {
      displayColors: false,
      backgroundColor: palette.ink,
      bodyColor: palette.paper,
      titleColor: palette.paper,
      bodyFont: font(look),
      padding: 10,
      callbacks: { title: () => '', label: words },
    },
  };
}

/** Leaves datasets without a name out of the legend. */
export function withoutHelpers<T extends { legend: { labels: object } }>(parts: T) {
  const filter = (item: { text: string }) => item.text !== '';
  return { ...parts, legend: { ...parts.legend, labels: { ...parts.legend.labels, filter } } };
}
