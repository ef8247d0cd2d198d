import { type SelectQueryBuilder, sql } from 'kysely';
import type { LibrarySchema } from './library-schema.ts';
import { nameKey } from './name-key.ts';

/** Which takes are wanted; what isn't given isn't asked for. */
export interface TakeFilter {
  /** A player, or null for takes without one. */
  readonly personId?: string | null | undefined;
  readonly exerciseId?: string | undefined;
  /** First and last day, `2026-03-09`. */
  readonly fromDay?: string | undefined;
  readonly toDay?: string | undefined;
  /** Some of the take is asked for at this tempo or faster, or slower, BPM. */
  readonly fromBpm?: number | undefined;
  readonly toBpm?: number | undefined;
  readonly tag?: string | undefined;
  readonly technique?: string | undefined;
  /** Words in the sheet's title. */
  readonly title?: string | undefined;
  readonly graded?: boolean | undefined;
}

const hour = 3_600_000;

/**
 * The earliest moment of a day anywhere: a day begins at most 14 hours before and ends at most 12 hours after the same day
 * in Greenwich. Indexes are by moment; the day itself is asked for besides.
 */
export const dayBegins = (day: string) => Date.parse(`${day}T00:00:00Z`) - 14 * hour;
const dayEnds = (day: string) => Date.parse(`${day}T00:00:00Z`) + 36 * hour;

/** Which table's index leads through the takes, in order of time: the one that leaves the fewest to look at. */
export const leadingTable = ({ exerciseId, tag }: TakeFilter) =>
  exerciseId !== undefined ? 'takeLine' : tag !== undefined ? 'takeTag' : 'take';

/**
 * A query over takes, narrowed to a filter. Conditions that an index can serve stand on the leading table's columns.
 */
export function filteredTakes<O>(
  takes: SelectQueryBuilder<LibrarySchema, 'take', O>,
  filter: TakeFilter,
): SelectQueryBuilder<LibrarySchema, 'take', O> {
  const { personId, exerciseId, fromDay, toDay, fromBpm, toBpm, tag, technique, title, graded } = filter;
  const leading = leadingTable(filter);
  const recordedAt = sql.ref<number>(`${leading}.recordedAt`);
  const person = sql.ref<string | null>(leading === 'takeLine' ? 'takeLine.personId' : 'take.personId');
  return takes
    .$if(exerciseId !== undefined, (query) =>
      query
        .innerJoin('takeLine', 'takeLine.takeId', 'take.id')
        .where('takeLine.exerciseId', '=', exerciseId!)
        .where('takeLine.isFirst', '=', sql.lit<1>(1)),
    )
    .$if(tag !== undefined, (query) =>
      query.innerJoin('takeTag', 'takeTag.takeId', 'take.id').where('takeTag.tag', '=', nameKey(tag!)),
    )
    .$if(personId === null, (query) => query.where(person, 'is', null))
    .$if(typeof personId === 'string', (query) => query.where(person, '=', personId!))
    .$if(fromDay !== undefined, (query) =>
      query.where(recordedAt, '>=', dayBegins(fromDay!)).where('take.day', '>=', fromDay!),
    )
    .$if(toDay !== undefined, (query) =>
      query.where(recordedAt, '<', dayEnds(toDay!)).where('take.day', '<=', toDay!),
    )
    .$if(fromBpm !== undefined, (query) => query.where('take.bpmHigh', '>=', fromBpm!))
    .$if(toBpm !== undefined, (query) => query.where('take.bpmLow', '<=', toBpm!))
    .$if(technique !== undefined, (query) => query.where('take.technique', '=', technique!))
    .$if(graded !== undefined, (query) => query.where('take.graded', '=', graded ? 1 : 0))
    .$if(title !== undefined, (query) =>
      query.where('take.sheetId', 'in', ({ selectFrom }) =>
        selectFrom('sheet')
          .select('sheet.id')
          .where(sql<number>`instr(${sql.ref('sheet.titleKey')}, ${nameKey(title!)})`, '>', 0),
      ),
    );
}
