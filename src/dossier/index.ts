/**
 * `dossier/`: a design handed over, and one received. `writeDossier` makes one ZIP file, a BagIt bag, out of a journal, and
 * has a door of its own, `write.ts`, since it prints reports and brings the PDF library with it;
 * `readDossier` verifies a stranger's bytes from the package to the last record and gives out all or nothing;
 * `dossierQuestions` says beforehand what a collaborator will ask. `archive/` and `bag/` are the two containers, written
 * and distrusted; `interchange/` gives figures to firmware and spreadsheets; `html/` shows the design in any browser.
 * Touches no disk: contents come in and go out as bytes. What is in a dossier is in docs/dossier.md.
 */
export { type ArchiveLimits, archiveLimits } from './archive/limits.ts';
export { pathFault, shownName } from './archive/safe-path.ts';
export { readZip } from './archive/zip-read.ts';
export { writeZip } from './archive/zip-write.ts';
export { type CheckedBag, checkBag } from './bag/check-bag.ts';
export { checksum } from './bag/checksum.ts';
export { writeBag } from './bag/write-bag.ts';
export type { DossierDescription } from './description.ts';
export {
  type Compared,
  type Differences,
  differencesOf,
  type RecordDifference,
  type Relation,
} from './differences.ts';
export {
  type ExportForm,
  exportEndings,
  exportForms,
  exportRevision,
} from './interchange/export-as.ts';
export { dossierQuestions, type Question, type QuestionKind } from './questions.ts';
export { type Dossier, readDossier } from './read.ts';
