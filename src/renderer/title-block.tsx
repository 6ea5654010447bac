/** The title block along the bottom edge: which sheet this is, and whether it is on the medium. */
import { Button } from 'react-aria-components';
import type { Settings } from '../preload/index.ts';
import { useChosen, useNotebook, useSurface, useView } from './store/context.ts';

const themes: readonly Settings['theme'][] = ['system', 'light', 'dark', 'high contrast'];

export function TitleBlock() {
  const store = useNotebook();
  const chosen = useChosen();
  const saving = useView((view) => view.saving);
  const readOnly = useView((view) => view.readOnly);
  const canUndo = useView((view) => view.canUndo);
  const canRedo = useView((view) => view.canRedo);
  const seq = useView((view) => view.entries.at(-1)?.seq ?? 0);
  const { settings, changeSettings } = useSurface();

  return (
    <section className="title-block" aria-label="Title block">
      <Cell label="Prototype" value={chosen?.prototype.name ?? 'none chosen'} />
      <Cell label="Revision" value={chosen?.revision.letter ?? '–'} />
      <Cell label="Status" value={chosen?.revision.status ?? '–'} />
      <div className="cell" role="status">
        <span className="cell-label">Journal</span>
        <span className="cell-value">
          {readOnly
            ? `read only, at ${seq}`
            : saving.status === 'saved'
              ? `saved, at ${seq}`
              : saving.status === 'saving'
                ? 'saving'
                : 'not saved'}
        </span>
      </div>
      <div className="cell buttons">
        <Button className="plain-button" isDisabled={!canUndo || readOnly} onPress={() => store.undo()}>
          Undo
        </Button>
        <Button className="plain-button" isDisabled={!canRedo || readOnly} onPress={() => store.redo()}>
          Redo
        </Button>
      </div>
      <label className="cell">
        <span className="cell-label">Written by</span>
        <input
          className="cell-input"
          value={settings.author}
          placeholder="your name"
          onChange={(event) => changeSettings({ ...settings, author: event.target.value })}
        />
      </label>
      <label className="cell">
        <span className="cell-label">Paper and ink</span>
        <select
          className="cell-input"
          value={settings.theme}
          onChange={(event) => {
            const theme = themes.find((each) => each === event.target.value);
            if (theme) changeSettings({ ...settings, theme });
          }}
        >
          {themes.map((theme) => (
            <option key={theme}>{theme}</option>
          ))}
        </select>
      </label>
    </section>
  );
}

function Cell({ label, value }: { label: string; value: string }) {
  return (
    <div className="cell">
      <span className="cell-label">{label}</span>
      <span className="cell-value">{value}</span>
    </div>
  );
}
