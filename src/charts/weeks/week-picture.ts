import type { ChartConfiguration } from 'chart.js';
import type { ChartTable } from '../chart-entry.ts';
import type { Look } from '../look.ts';
import { type DayCourse, dayCourseChart, dayCourseTable, dayCourseText } from './day-course.ts';
import { type PairLanes, pairLanesChart, pairLanesTable, pairLanesText } from './pair-lanes.ts';
import {
  type PracticeWeeks,
  practiceWeeksChart,
  practiceWeeksTable,
  practiceWeeksText,
} from './practice-weeks.ts';
import {
  type SpreadByTempo,
  spreadByTempoChart,
  spreadByTempoTable,
  spreadByTempoText,
} from './spread-by-tempo.ts';

/** A picture of several takes: plain data that a page can carry along, drawn the same for print and for the screen. */
export type WeekPicture = PairLanes | DayCourse | SpreadByTempo | PracticeWeeks;

export function weekChart(data: WeekPicture, look: Look): ChartConfiguration {
  switch (data.kind) {
    case 'pair-lanes':
      return pairLanesChart(data, look) as ChartConfiguration;
    case 'day-course':
      return dayCourseChart(data, look) as ChartConfiguration;
    case 'spread-by-tempo':
      return spreadByTempoChart(data, look) as ChartConfiguration;
    case 'practice-weeks':
      return practiceWeeksChart(data, look) as ChartConfiguration;
  }
}

/** What the picture shows, for those who read rather than look. */
export function weekText(data: WeekPicture): string {
  switch (data.kind) {
    case 'pair-lanes':
      return pairLanesText(data);
    case 'day-course':
      return dayCourseText(data);
    case 'spread-by-tempo':
      return spreadByTempoText(data);
    case 'practice-weeks':
      return practiceWeeksText(data);
  }
}

export function weekTable(data: WeekPicture): ChartTable {
  switch (data.kind) {
    case 'pair-lanes':
      return pairLanesTable(data);
    case 'day-course':
      return dayCourseTable(data);
    case 'spread-by-tempo':
      return spreadByTempoTable(data);
    case 'practice-weeks':
      return practiceWeeksTable(data);
  }
}
