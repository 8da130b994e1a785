/** What an item of a plan is called and stands for. A drill that a later version no longer has keeps its id for a name. */
import { puttingDrill } from '../../../drills/putting-drills.ts';
import type { PuttingDrill } from '../../../sim/index.ts';
import type { PlanItem } from '../../store/planSchema.ts';
import { READING_SETS } from './plan.ts';

type Named = Pick<PlanItem, 'kind' | 'activity'>;

export const drillOf = ({ kind, activity }: Named): PuttingDrill | undefined =>
  kind === 'drill' ? puttingDrill(activity) : undefined;

export const nameOf = ({ kind, activity }: Named): string =>
  (kind === 'drill' ? puttingDrill(activity) : READING_SETS.find(({ id }) => id === activity))?.name ??
  activity;
