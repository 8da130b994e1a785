/** What has narrowed the family of the preset in use, and the press that undoes it; nothing where nothing has. */

import { backToPreset, knownPlayer, narrowedBy, presetInUse } from '../state/settings.ts';
import { backLabel, narrowedWords } from '../text/narrowed.ts';

export const Narrowed = () => {
  const preset = presetInUse.value;
  const by = narrowedBy.value;
  if (preset === undefined || by.length === 0) return null;
  const { members, player } = knownPlayer.value;
  return (
    <div class="narrowed" data-testid="narrowed">
      <p>{narrowedWords({ preset: preset.name, by, members, player })}</p>
      <p>
        <button type="button" class="plain" onClick={backToPreset}>
          {backLabel(preset.name)}
        </button>
      </p>
    </div>
  );
};
