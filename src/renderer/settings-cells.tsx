/** The settings of this machine as cells of a title block: who writes, and on what paper. */
import type { Settings } from '../preload/index.ts';
import { useSurface } from './store/context.ts';

const themes: readonly Settings['theme'][] = ['system', 'light', 'dark', 'high contrast'];
const papers: readonly Settings['paper'][] = ['A4', 'Letter'];

export function NameCell({ label = 'Written by' }: { label?: string }) {
  const { settings, changeSettings } = useSurface();
  return (
    <label className="cell">
      <span className="cell-label">{label}</span>
      <input
        className="cell-input"
        value={settings.author}
        placeholder="your name"
        autoComplete="name"
        maxLength={120}
        onChange={(event) => changeSettings({ ...settings, author: event.target.value })}
      />
    </label>
  );
}

export function PaperCell() {
  const { settings, changeSettings } = useSurface();
  return (
    <ChoiceCell
      label="Paper and ink"
      value={settings.theme}
      choices={themes}
      onChoose={(theme) => changeSettings({ ...settings, theme })}
    />
  );
}

/** What reports are printed on. */
export function PaperSizeCell() {
  const { settings, changeSettings } = useSurface();
  return (
    <ChoiceCell
      label="Reports on"
      value={settings.paper}
      choices={papers}
      onChoose={(paper) => changeSettings({ ...settings, paper })}
    />
  );
}

function ChoiceCell<T extends string>({
  label,
  value,
  choices,
  onChoose,
}: {
  label: string;
  value: T;
  choices: readonly T[];
  onChoose: (choice: T) => void;
}) {
  return (
    <label className="cell">
      <span className="cell-label">{label}</span>
      <select
        className="cell-input"
        value={value}
        onChange={(event) => {
          const chosen = choices.find((each) => each === event.target.value);
          if (chosen !== undefined) onChoose(chosen);
        }}
      >
        {choices.map((each) => (
          <option key={each}>{each}</option>
        ))}
      </select>
    </label>
  );
}
