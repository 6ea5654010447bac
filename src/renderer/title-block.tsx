/** The title block along the bottom edge: which sheet this is, and whether it is on the medium. */
import { memo } from 'react';
import { Button } from 'react-aria-components';
import { NameCell, PaperCell, PaperSizeCell } from './settings-cells.tsx';
import { useChosenPiece, useNotebook, useView } from './store/context.ts';
import type { NotebookView } from './store/notebook-store.ts';

export const TitleBlock = memo(function TitleBlock() {
  const prototype = useChosenPiece((chosen) => chosen.prototype.name);
  const letter = useChosenPiece(({ revision }) => revision.letter);
  const status = useChosenPiece(({ revision }) => revision.status);
  return (
    <section className="title-block" aria-label="Title block">
      <Cell label="Prototype" value={prototype ?? 'none chosen'} wide />
      <Cell label="Revision" value={letter ?? '–'} />
      <Cell label="Status" value={status ?? '–'} />
      <JournalCell />
      <UndoCell />
      <NameCell />
      <PaperCell />
      <PaperSizeCell />
    </section>
  );
});

function Cell({ label, value, wide = false }: { label: string; value: string; wide?: boolean }) {
  return (
    <div className={wide ? 'cell wide' : 'cell'}>
      <span className="cell-label">{label}</span>
      <span className="cell-value">{value}</span>
    </div>
  );
}

function JournalCell() {
  return <Cell label="Journal" value={useView(journalText)} />;
}

function journalText({ readOnly, saving, entries }: NotebookView): string {
  const seq = entries.at(-1)?.seq ?? 0;
  if (readOnly) return `read only, at ${seq}`;
  return saving.status === 'saved' ? `saved, at ${seq}` : saving.status;
}

function UndoCell() {
  const store = useNotebook();
  const canUndo = useView((view) => view.canUndo && !view.readOnly);
  const canRedo = useView((view) => view.canRedo && !view.readOnly);
  return (
    <div className="cell buttons">
      <Button className="plain-button" isDisabled={!canUndo} onPress={() => store.undo()}>
        Undo
      </Button>
      <Button className="plain-button" isDisabled={!canRedo} onPress={() => store.redo()}>
        Redo
      </Button>
    </div>
  );
}
