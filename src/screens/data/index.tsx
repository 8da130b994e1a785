/** The player's data: backup, import with its plan first, exports, storage, the invented player. Connects; leaves out the rest. */
import { useEffect } from 'preact/hooks';
import { saveFile } from '../../controls/saveFile.ts';
import { ownDatabase, recordsProblem } from '../../state/records.ts';
import { units } from '../../state/settings.ts';
import { localDay } from '../../store/day.ts';
import { askToPersist, storageState } from '../../store/persistence.ts';
import { DemoCard } from './DemoCard.tsx';
import { OpenCard, Progress, Said } from './OpenCard.tsx';
import { ExportCard, OverviewCard, StorageCard } from './Overview.tsx';
import { PreviewCard } from './PreviewCard.tsx';
import { createDataSession } from './session.ts';
import './data.css';

const session = createDataSession({
  openDatabase: async () => (await ownDatabase()).database,
  now: () => Date.now(),
  dayOf: localDay,
  handOver: (name, type, pieces) => saveFile(name, new Blob([...pieces], { type })),
  storageState,
  askToPersist,
});

export const DataScreen = () => {
  useEffect(() => {
    // What cannot be read now is said by recordsProblem, or when something is done.
    session.look().catch(() => undefined);
  }, []);
  const stage = session.stage.value;
  const problem = recordsProblem.value;
  return (
    <div class="data">
      {problem !== undefined && (
        <p class="problem data-wide" role="alert">
          {problem}
        </p>
      )}
      <OverviewCard on={session} />
      <OpenCard on={session} />
      {stage.kind === 'working' && <Progress stage={stage} onCancel={session.cancel} />}
      {stage.kind === 'said' && <Said stage={stage} />}
      {stage.kind === 'preview' && <PreviewCard on={session} preview={stage} units={units.value} />}
      <ExportCard on={session} />
      <StorageCard on={session} />
      <DemoCard />
    </div>
  );
};
