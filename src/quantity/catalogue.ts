/**
 * Every sentence about bad input, in one place: the reason, and what to do. Names in braces are filled with
 * the figures of the problem. Add a line here, then use its key as the code of a `Problem`.
 */
export const catalogue = {
  // quantities as people write them
  'quantity.empty': {
    reason: 'nothing is written here.',
    remedy: 'Type a number with its unit, for example {example}.',
  },
  'quantity.not-a-number': {
    reason: '“{text}” does not begin with a number.',
    remedy: 'Type a number with its unit, for example {example}.',
  },
  'quantity.unknown-unit': {
    reason: 'the unit “{unit}” is not known.',
    remedy: 'Use a unit such as {example}; units are multiplied with · and divided with /.',
  },
  'quantity.wrong-dimension': {
    reason: '“{text}” is {found}, but {expected} is wanted.',
    remedy: 'Give it in a unit of that kind, for example {example}.',
  },
  'quantity.weight-as-mass': {
    reason: '“{text}” is made with a unit of mass, but {expected} is wanted.',
    remedy: 'If it is a weight, write the unit of force: {example}.',
  },
  'quantity.turns-or-radians': {
    reason: '“{text}” does not say whether it counts turns or radians.',
    remedy: 'Write rpm, rev/s, °/s or rad/s, for example {example}.',
  },
  'quantity.misspelt-unit': {
    reason: 'the unit “{unit}” is not known.',
    remedy: 'Capitals matter: did you mean “{suggestion}”?',
  },
  'quantity.unit-brackets': {
    reason: 'it is not clear what “{unit}” divides by.',
    remedy: 'Put everything below the line in brackets, for example N·m·s/(rad·V).',
  },
  'quantity.temperature-in-product': {
    reason: '“{unit}” has a scale that does not begin at nought, and cannot be multiplied or divided.',
    remedy: 'Write K for a difference of temperature.',
  },
  'quantity.ambiguous-percentage': {
    reason: '“{text}” could be a part of the value or a part of one.',
    remedy: 'Write both in the same unit, for example {example}.',
  },
  'quantity.uncertainty-twice': {
    reason: '“{text}” gives an uncertainty in brackets and another after ±.',
    remedy: 'Keep one of them.',
  },
  'quantity.too-long': {
    reason: 'it is {length} characters long, and at most {limit} are read.',
    remedy: 'Type one number with its unit, for example {example}.',
  },
  'quantity.too-large': {
    reason: '“{text}” is beyond the numbers that can be reckoned with.',
    remedy: 'Check the exponent, for example {example}.',
  },
  'quantity.missing-unit': {
    reason: '“{text}” has no unit.',
    remedy: 'Add one, for example {example}.',
  },
  'quantity.decimal-comma': {
    reason: '“{text}” has a decimal comma, which could also separate thousands.',
    remedy: 'Write a point: {example}.',
  },
  'quantity.out-of-range': {
    reason: '{name} is {value}, outside {range}.',
    remedy: 'Check the number and its unit.',
  },
  'quantity.bad-uncertainty': {
    reason: 'the uncertainty “{text}” cannot be read.',
    remedy:
      'Write it as ± with a unit, for example {example}, or in brackets on the last digits, for example 73.2(4) g.',
  },
  // formulas
  'expression.empty': {
    reason: 'there is no formula.',
    remedy: 'Write one, for example ballast_mass * g_n.',
  },
  'expression.too-long': {
    reason: 'the formula is {length} characters long, and at most {limit} are read.',
    remedy: 'Break it into lines of a calculation.',
  },
  'expression.too-deep': {
    reason: 'more than {limit} brackets are open at once.',
    remedy: 'Break it into lines of a calculation.',
  },
  'expression.too-many': {
    reason: 'the formula has more than {limit} terms.',
    remedy: 'Break it into lines of a calculation.',
  },
  'expression.unexpected-character': {
    reason: '“{character}” has no meaning in a formula.',
    remedy: 'Use numbers with units, names of figures, + - * / ^ and brackets.',
  },
  'expression.no-assignment': {
    reason: 'a single = cannot stand here.',
    remedy: 'Begin a line of a calculation with one name and =, or compare with ==.',
  },
  'expression.no-text': {
    reason: 'a formula has no texts.',
    remedy: 'Write the name of a figure without quotation marks; write an inch as in.',
  },
  'expression.no-lists': {
    reason: 'a formula has no lists, ranges or blocks (“{character}”).',
    remedy: 'Use round brackets only.',
  },
  'expression.no-members': {
    reason: 'a point stands only inside a number.',
    remedy: 'Write names of figures without points.',
  },
  'expression.bracket-open': { reason: 'this bracket is not closed.', remedy: 'Add the closing one.' },
  'expression.bracket-close': { reason: 'this bracket was never opened.', remedy: 'Take it away.' },
  'expression.comma': {
    reason: 'a comma stands only between the values of a function.',
    remedy: 'Write a decimal point, as in 1.5.',
  },
  'expression.unfinished': { reason: 'the formula ends too early.', remedy: 'Something has to follow.' },
  'expression.unexpected': { reason: '“{text}” cannot stand here.', remedy: 'Check what comes before it.' },
  'expression.missing-sign': {
    reason: 'there is no sign between two values.',
    remedy: 'Write * to multiply; a unit follows a number only.',
  },
  'expression.not-allowed': {
    reason: 'this cannot be part of a formula.',
    remedy: 'Use numbers with units, names of figures, + - * / ^, brackets and functions.',
  },
  'expression.not-a-unit': {
    reason: '“{word}” after a number is not a unit.',
    remedy: 'To multiply by a figure, write * between.',
  },
  'expression.no-hertz': {
    reason: '“{unit}” could count turns or radians.',
    remedy: 'Write rpm, rev/s or rad/s for a rotation, 1/(0.1 s) for anything else.',
  },
  'expression.no-temperature-scale': {
    reason: '“{unit}” has a scale that does not begin at nought.',
    remedy: 'Write the temperature in K.',
  },
  'expression.fraction-of-unit': {
    reason: 'it is not clear whether the unit belongs to the fraction or stands below the line.',
    remedy: 'Write 0.5 m for half a metre, 1/(2 m) for one by two metres.',
  },
  'expression.power-of-unit': {
    reason: 'it is not clear whether the number or only its unit is raised.',
    remedy: 'Write (2 m)^2 for both, 2 m² without a space for the unit.',
  },
  'expression.unit-or-name': {
    reason: '“{name}” in “{unit}” is a unit and a figure here.',
    remedy: 'Leave spaces around the sign to use the figure, or rename the figure.',
  },
  'expression.inch-or-in': {
    reason: '“in” after a number is the inch.',
    remedy: 'Put the number in brackets to ask for another unit: ({number}) in …',
  },
  'expression.in-not-last': {
    reason: '“in” stands only at the end of a formula.',
    remedy: 'Take the unit out of the brackets.',
  },
  'expression.in-condition': {
    reason: 'a condition has no unit to be shown in.',
    remedy: 'Take “in” and its unit away.',
  },
  'expression.cannot-show-in': {
    reason: 'the result is {found} and cannot be shown in {unit}.',
    remedy: 'Ask for a unit of that kind, or check the formula.',
  },
  'expression.unknown-symbol': {
    reason: '“{name}” is not known here.{hint}',
    remedy: 'Use the name of a figure; in a calculation, a name from a line above.',
  },
  'expression.unknown-function': {
    reason: '“{name}” is not a function.',
    remedy: 'The functions are {functions}. To multiply, write * before the bracket.',
  },
  'expression.function-alone': {
    reason: '“{name}” is a function and needs its value in brackets.',
    remedy: 'Write {name}(…), or choose another name.',
  },
  'expression.operand-count': {
    reason: '{name} takes {wanted} values and was given {found}.',
    remedy: 'Check the commas between them.',
  },
  'expression.dimensions-differ': {
    reason: '{left} and {right} cannot be {how}.',
    remedy: 'Check the units of both sides.',
  },
  'expression.number-wanted': {
    reason: '{what} takes a number without unit, or an angle; this is {found}.',
    remedy: 'Divide by something of the same kind first.',
  },
  'expression.bad-exponent': {
    reason: '{found} cannot be raised to that.',
    remedy: 'Use a whole or half exponent, written as a number.',
  },
  'expression.division-by-zero': {
    reason: 'this is nought, and something is divided by it.',
    remedy: 'Check the figures in it.',
  },
  'expression.not-real': {
    reason: '{what} has no value at {value}.',
    remedy: 'Check the figures in it.',
  },
  'expression.not-finite': {
    reason: 'the result is larger than any number that can be reckoned with.',
    remedy: 'Check the figures and exponents in it.',
  },
  'expression.no-slope': {
    reason: 'the curve is upright here, at {value}, so that an uncertainty cannot be carried through it.',
    remedy: 'Check the figure; it sits at the end of what is possible.',
  },
  'expression.condition-here': {
    reason: 'this is a condition, and a value is wanted.',
    remedy: 'Comparisons, and, or, not belong in conditions only.',
  },
  'expression.not-needs-brackets': {
    reason: '“not” reaches only to the next sign.',
    remedy: 'Write not (a > b) with brackets.',
  },
  'expression.no-condition': {
    reason: 'this is a value, and a condition is wanted.',
    remedy: 'Compare it with something, as in turn_speed > 2 m/s.',
  },
  'calc.too-many-lines': {
    reason: 'a calculation has at most {limit} lines.',
    remedy: 'Begin a second one below it; it may use the names of this one.',
  },
  'calc.given-twice': {
    reason: '“{name}” is given in line {line} already.',
    remedy: 'Choose another name.',
  },
  'calc.given-later': {
    reason: '“{name}” is given further down, in line {line}.',
    remedy: 'Move that line up.',
  },
  'calc.hangs-on-problem': {
    reason: 'it uses “{name}”, and line {line} has a problem.',
    remedy: 'Mend line {line} first.',
  },
  'calc.name-of-figure': {
    reason: '“{name}” is a figure of this revision.',
    remedy: 'Choose another name, for example {name}_new.',
  },
  'calc.reserved-name': {
    reason: '“{name}” has a meaning of its own in formulas.',
    remedy: 'Choose another name.',
  },
  // calculations
  'calculation.out-of-domain': {
    reason: '{name} is {value}, but {requirement}.',
    remedy: 'Check that figure and the ones it is made from.',
  },
  'calculation.missing': {
    reason: '{name} is missing.',
    remedy: 'Enter it on the page “{page}”.',
  },
  'calculation.unknown': {
    reason: 'there is no calculation “{id}”.',
    remedy: 'List them with: calc list',
  },
  'calculation.not-measured': {
    reason: '{name} is marked as not measured.',
    remedy: 'Measure it and enter it on the page “{page}”.',
  },
  'calculation.unknown-input': {
    reason: '{id} has no input “{name}”.',
    remedy: 'Its inputs are: {names}.',
  },
  'calculation.missing-input': {
    reason: 'the input {name} ({meaning}) is missing.',
    remedy: 'Give it in {unit}.',
  },
  'calculation.list-wanted': {
    reason: '{name} has to be a list.',
    remedy: 'Give one figure for each part or section.',
  },
  'calculation.single-wanted': {
    reason: '{name} has to be a single figure, not a list.',
    remedy: 'Give one figure.',
  },
  'calculation.not-finite': {
    reason: '{name} is {value}, which is not a finite number.',
    remedy: 'Give an ordinary number.',
  },
  'calculation.bad-uncertainty': {
    reason: 'the standard uncertainty of {name} is {value}.',
    remedy: 'It has to be a number of at least 0.',
  },
  // figures and margins
  'figure.not-applicable': {
    reason: '{name} does not apply to this revision.',
    remedy: 'It belongs to hardware that the revision does not have.',
  },
  'figure.unknown': {
    reason: 'there is no figure “{name}”.',
    remedy: 'Check the spelling; the handbook lists the names.',
  },
  'margin.unknown': {
    reason: 'there is no margin “{id}” for this revision.',
    remedy: 'Enter the requirement that it belongs to.',
  },
  // random draws
  'draws.bad-seed': {
    reason: 'the seed {seed} is not a whole number from 0 on.',
    remedy: 'Give one, for example 1.',
  },
  'draws.bad-digits': {
    reason: 'the uncertainty is drawn to 1 or to 2 significant digits, not to {digits}.',
    remedy: 'Give 1 or 2.',
  },
  'draws.nothing': {
    reason: 'no input of it carries an uncertainty, so that every draw would be the same.',
    remedy: 'Type the uncertainty with an input, for example 73 g ± 0.5 g.',
  },
  'draws.not-started': {
    reason: 'drawing could not be started: {detail}.',
    remedy: 'Close the window and open it again; nothing is lost.',
  },
  'draws.unknown': {
    reason: 'there is no figure and no margin “{name}” in this revision.',
    remedy: 'Check the name.',
  },
  // fields of the records
  'quantity.not-whole': {
    reason: '{value} is not a whole number.',
    remedy: 'Count them: 1, 2, 3 and so on.',
  },
  'quantity.bore-beyond-rim': {
    reason: 'a bore of {bore} does not fit into an outer diameter of {rim}.',
    remedy: 'Check both diameters and their units.',
  },
  // records
  'record.invalid': { reason: '{detail}.', remedy: 'Correct the value; nothing was stored.' },
  'record.unknown': {
    reason: 'there is no {kind} “{id}”.',
    remedy: 'It may belong to another notebook; check the name.',
  },
  'record.exists': { reason: 'a {kind} “{id}” exists already.', remedy: 'Choose another name.' },
  'record.issued': {
    reason: 'revision {letter} is issued and does not change.',
    remedy: 'Make a new revision from it and change that one.',
  },
  // the notebook on disk
  'notebook.bad-name': {
    reason: '“{name}” cannot be the name of a folder on every computer: {detail}.',
    remedy: 'Use letters, digits, spaces, hyphens and dots inside, for example “Tilt car 2”.',
  },
  'notebook.exists': { reason: 'a notebook “{name}” is there already.', remedy: 'Choose another name.' },
  'notebook.not-found': {
    reason: 'there is no notebook “{name}”.',
    remedy: 'Check the name; a notebook is a folder with a file journal.jsonl in it.',
  },
  'notebook.locked': {
    reason: 'it is open in another place: process {pid} on {host}, since {since}.',
    remedy:
      'It can be read here. To change it, close it there; if nothing is running there any more, delete the file “lock” in the folder of the notebook.',
  },
  'notebook.read-only': {
    reason: 'this notebook can only be read here: {detail}.',
    remedy: 'Remove the cause, then open the notebook again; nothing was stored.',
  },
  'notebook.cannot-write': {
    reason: 'its folder cannot be written: {detail}.',
    remedy: 'It can be read here. Give yourself the right to write in the folder, or copy it elsewhere.',
  },
  'notebook.not-open': {
    reason: 'this notebook is no longer open at the desk.',
    remedy: 'Open it again; what was acknowledged is on the disk.',
  },
  'journal.not-a-journal': {
    reason: 'the first line is not the heading of a journal: {detail}.',
    remedy: 'Put back the file from a copy of the notebook; nothing was changed.',
  },
  'journal.newer': {
    reason: 'the journal has version {version}; this program reads version {known}.',
    remedy: 'Open it with a newer Counterpoise; nothing was changed.',
  },
  'journal.torn-tail': {
    reason: 'the end of the journal, from line {line} ({bytes} bytes), was never completely written.',
    remedy: 'It was moved to {file}; everything before it is sound.',
  },
  'journal.torn-tail-left': {
    reason: 'the end of the journal, from line {line} ({bytes} bytes), was never completely written.',
    remedy: 'Nothing was changed; everything before it is sound. Rebuild the notebook to set the end aside.',
  },
  'journal.damaged': {
    reason: 'line {line} is damaged: {detail}.',
    remedy:
      'The {sound} lines before it can be read, not changed. Put back the file from a copy of the notebook.',
  },
  'journal.changed-elsewhere': {
    reason: 'another window has written: the last entry is {last}, but this window knew of {known}.',
    remedy: 'Open the notebook again to see the changes, then repeat this one; nothing was stored.',
  },
  'journal.changed-outside': {
    reason: 'another program has changed the journal: {detail}.',
    remedy: 'Open the notebook again; nothing was stored.',
  },
  'journal.write-failed': {
    reason: 'the change could not be written: {detail}.',
    remedy: 'Nothing was stored. Remove the cause, then repeat the change.',
  },
  'journal.beside': {
    reason:
      'another journal, “{file}”, lies beside it, as synchronising programs leave one when two computers wrote.',
    remedy: 'Nothing of it is shown here. Merge it into this notebook, then move it away.',
  },
  'journal.refused': {
    reason: 'entry {seq} does not fit what was recorded before it: {detail}',
    remedy: 'The entry stays on record and is left out of the notebook’s state.',
  },
  'attachment.missing': {
    reason: 'the file “{name}” ({sha256}) is missing.',
    remedy: 'Put it back into the folder “attachments” from a copy of the notebook.',
  },
  'attachment.altered': {
    reason: 'the file “{name}” ({sha256}) is not what was attached: {detail}.',
    remedy: 'Put back the original into the folder “attachments” from a copy of the notebook.',
  },
  'attachment.too-large': {
    reason: 'the file has {size} MB; an attachment may have {limit} MB.',
    remedy: 'Attach a shorter log or a smaller picture.',
  },
  'file.failed': { reason: '{detail}.', remedy: 'Check the folder and the disk, then try again.' },
  'settings.damaged': {
    reason: 'the settings are not in the expected form.',
    remedy: 'The file was moved to {file}. Load the window again to go on with the usual settings.',
  },
  // packages that come from elsewhere, and those that are handed over
  'archive.not-a-zip': {
    reason: 'it is not a ZIP file.',
    remedy: 'Choose the dossier as it was sent; nothing was taken in.',
  },
  'archive.damaged': { reason: '{detail}.', remedy: 'Ask for the dossier once more; nothing was taken in.' },
  'archive.unsafe': {
    reason: '{detail}.',
    remedy: 'Do not unpack it with other programs either; nothing was taken in.',
  },
  'archive.too-large': { reason: '{detail}.', remedy: 'Ask for a smaller one; nothing was taken in.' },
  'archive.unsupported': {
    reason: '{detail}.',
    remedy: 'Ask for it as a plain ZIP file; nothing was taken in.',
  },
  'bag.invalid': { reason: '{detail}.', remedy: 'Ask for the dossier once more; nothing was taken in.' },
  'dossier.foreign': {
    reason: 'it is a bag, but not a dossier of this program: {detail}.',
    remedy: 'Unpack it and read its files; nothing was taken in.',
  },
  'dossier.newer': {
    reason: 'it is of version {version}, and this program knows {known}.',
    remedy: 'Use a newer version of this program; nothing was taken in.',
  },
  'dossier.invalid': { reason: '{detail}.', remedy: 'Ask for the dossier once more; nothing was taken in.' },
  'dossier.cannot-write': { reason: '{detail}.', remedy: 'Mend this first; no dossier was written.' },
  'dossier.into-existing': {
    reason: 'something is there already, and a dossier is not joined to an existing notebook.',
    remedy: 'Name a new folder for it, then merge the two; nothing was taken in.',
  },
  // copies of notebooks
  'copies.no-folder': {
    reason: 'no folder for copies is chosen.',
    remedy: 'Choose one in the settings, best on another disk.',
  },
  'copies.failed': {
    reason: 'no copy was made in “{folder}”: {detail}.',
    remedy: 'Nothing in the notebook is touched. Check that the folder is there and has room.',
  },
  'copies.not-continued': {
    reason: 'the notebook no longer holds all that the copy of {at} holds.',
    remedy:
      'A new copy was made and no older one removed. Compare them: restore the older one from “{folder}”.',
  },
  'copies.not-found': {
    reason: 'there is no copy “{name}”.',
    remedy: 'Choose one from the list: a file journal-….jsonl, or a folder with journal.jsonl in it.',
  },
  // merging two copies of a notebook
  'merge.other-notebook': {
    reason: '“{name}” is another notebook, not a copy of this one.',
    remedy: 'Merge copies that were made from the same notebook.',
  },
  'merge.renumbered': {
    reason: 'number {was} was given away on both sides; theirs is number {number} now.',
    remedy: 'Texts that speak of number {was} stay as they were written.',
  },
  'merge.relettered': {
    reason: 'both sides have made a revision {was}; theirs is revision {letter} now.',
    remedy: 'Mark the vehicle and the papers of theirs with {letter}.',
  },
  'merge.renamed': {
    reason: 'both sides have made a record “{was}” with different content; theirs is “{id}” now.',
    remedy: 'Both are kept; compare them.',
  },
  'merge.issued-twice': {
    reason: '{letter} was issued on both sides with the same content; ours stands.',
    remedy: 'Nothing is to be done.',
  },
  'merge.issued-apart': {
    reason:
      '{letter} was issued on one side and changed on the other; theirs goes on as a record of its own.',
    remedy: 'Compare the two, and say which of them the vehicle is.',
  },
  'merge.left-out': {
    reason: 'entry {seq} of theirs, by {by}, does not fit and was left out.',
    remedy: 'Look it up in their copy, and repeat it here if it is wanted.',
  },
  // between the window and the desk
  'desk.bad-request': {
    reason: 'the window asked for something that the desk does not take: {detail}.',
    remedy: 'Nothing was done. Reload the window; if it comes again, it is a mistake in the program.',
  },
  'desk.not-allowed': {
    reason: 'the request did not come from this program’s own window: {detail}.',
    remedy: 'Open the window with the address that the start printed.',
  },
  'desk.too-large': {
    reason: 'the request is larger than {limit} MB.',
    remedy: 'Send less at once.',
  },
  'desk.unreachable': {
    reason: 'the desk does not answer: {detail}.',
    remedy: 'Check that the program still runs where it was started. What was acknowledged is on the disk.',
  },
  'desk.defect': {
    reason: 'the program made a mistake: {detail}.',
    remedy: 'What was acknowledged is on the disk. Open the notebook again.',
  },
  'desk.no-demo': {
    reason: 'this desk has no demo notebook to write.',
    remedy: 'Create a notebook of your own.',
  },
  // templates of checklists and cards
  'template.not-the-form': {
    reason: 'at {path}: {detail}.',
    remedy: 'Compare it with the format in docs/templates.md.',
  },
  'template.unknown-name': {
    reason: '“{name}” is no figure of this program.',
    remedy: 'Check its spelling; the names are listed in docs/templates.md.',
  },
  'template.unclosed': {
    reason: 'a pair of opening braces is never closed.',
    remedy: 'Close it after the name; the form is explained in docs/templates.md.',
  },
  'template.duplicate': {
    reason: 'the id “{id}” is used twice.',
    remedy: 'Give each item its own id.',
  },
  'template.lacks': {
    reason: 'an item of kind “{kind}” needs “{field}”.',
    remedy: 'Add it, or choose another kind.',
  },
  'template.no-source': {
    reason: 'the item does not say where it comes from.',
    remedy: 'Name the publication and clause, or write “project choice”.',
  },
  'template.unit-mismatch': {
    reason: '“{text}” is {found}, but {expected} is wanted for {unit}.',
    remedy: 'Correct the expression or the unit.',
  },
  'template.unknown-checklist': {
    reason: 'there is no checklist “{id}”.',
    remedy: 'Use one of: {known}.',
  },
  // checklists under way
  'checklist.stale': {
    reason: 'revision {letter} has been changed since this checklist was made from it.',
    remedy: 'Start a new run; its checklist will carry the figures of the vehicle as it is now.',
  },
  'checklist.closed': {
    reason: 'the run is {status}.',
    remedy: 'Start a new run to go through the checklist again.',
  },
  'checklist.not-cleared': {
    reason: 'the run has not been cleared.',
    remedy: 'Meet every item before the run first.',
  },
  'checklist.unknown-item': {
    reason: 'there is no item “{id}” on this checklist.',
    remedy: 'Choose one of its items.',
  },
  'checklist.held': {
    reason: 'the hold point “{hold}” comes first and is not met.',
    remedy: 'Meet it; nothing goes on until then.',
  },
  'checklist.open': {
    reason: 'the item has not been answered.',
    remedy: 'Do it and answer it.',
  },
  'checklist.not-met': {
    reason: 'the item was answered as not met.',
    remedy: 'Put it right and answer it again.',
  },
  'checklist.missing-figure': {
    reason: 'the item needs {names}, which the revision does not give.',
    remedy: 'Enter what is missing, then start a new run.',
  },
  'checklist.missing-reading': {
    reason: 'nothing was read.',
    remedy: 'Read it and type the value, for example {example}.',
  },
  'checklist.out-of-limits': {
    reason: '{reading} is outside {limits}.',
    remedy: 'Stop here. Put it right, then read again.',
  },
  'checklist.stopped': {
    reason: 'it was answered “{choice}”, which stops the run.',
    remedy: 'Put it right and answer it again, or end the run.',
  },
  'checklist.unknown-choice': {
    reason: '“{choice}” is none of the answers offered.',
    remedy: 'Choose one of: {choices}.',
  },
  'checklist.initials': {
    reason: 'there are no initials, or more than eight letters of them.',
    remedy: 'Type one to eight letters.',
  },
  'checklist.second-person': {
    reason: 'two people have to answer this, each with their own initials.',
    remedy: 'Let the second person type theirs.',
  },
  'checklist.note-needed': {
    reason: 'this hold point was answered as not met before.',
    remedy: 'Say in a note what was put right.',
  },
  'checklist.empty': {
    reason: 'there is nothing on the checklist.',
    remedy: 'Choose a card whose checklists have items for this vehicle.',
  },
  'checklist.not-clear': {
    reason: 'not everything is met; the first of {count}: {first}',
    remedy: 'See them on the checklist.',
  },
  'checklist.wait-not-begun': {
    reason: 'the wait has not been started, or not in this session of the program; its time cannot be told.',
    remedy: 'Start the wait, and leave the program open until it is over.',
  },
  'checklist.waiting': {
    reason: '{passed} of {needed} have passed.',
    remedy: 'Wait out the rest; touch nothing.',
  },
  'checklist.wait-unknown': {
    reason: 'how long to wait is not known: {names}.',
    remedy: 'Enter what was measured with the readings of the run.',
  },
  'checklist.no-wait': {
    reason: 'the item is not a wait, or it is not its turn.',
    remedy: 'Choose a timed item that is open.',
  },
  'checklist.clock-shifted': {
    reason: 'the clock of the computer moved {shift} against the time that passed.',
    remedy: 'The wait counts the time that passed. Check the clock before times are written down.',
  },
  'checklist.missing-photo': {
    reason: 'no picture of this run is named in the answer.',
    remedy: 'Take it, attach it to the run, and answer with it.',
  },
  // going on all the same
  'override.unsigned': {
    reason: 'a name and a reason are both needed to go on all the same.',
    remedy: 'Write who decides, and why; the report shows both.',
  },
  'override.nothing': {
    reason: 'there is nothing here that could be gone past.',
    remedy: 'See what stands in the way, and answer that.',
  },
  'override.refused': {
    reason: 'this cannot be gone past: {what}',
    remedy: 'Put it right.',
  },
  // readiness for a run
  'readiness.not-ready': {
    reason: '{count} things stand in the way; the first: {first}',
    remedy: 'Put them right, or go on by name and with a reason for each.',
  },
  'readiness.run-under-way': {
    reason: 'run {number} of this prototype is under way.',
    remedy: 'Finish it or break it off first.',
  },
  'readiness.not-safe': {
    reason: 'run {number} was broken off and has not been made safe.',
    remedy: 'Answer its items after the run.',
  },
  'readiness.margin': {
    reason: 'the margin “{title}” {standing}.',
    remedy: 'Change the revision, or measure better what it rests on.',
  },
  'readiness.rung': {
    reason: '“{title}” comes before this test and is {standing} on revision {letter}.',
    remedy: 'Run it first, or argue in writing that an earlier run still counts.',
  },
  'readiness.no-ladder': {
    reason: 'the card stands on no ladder for this vehicle: which tests come before it is not known.',
    remedy: 'Use a card of the ladder, or decide by name.',
  },
  'readiness.failure': {
    reason: 'failure report {number}, “{title}”, severity {severity}, is not closed.',
    remedy: 'Find the cause, put it right, show that it works, and close it.',
  },
  'readiness.checklist': {
    reason: 'the checklist asks for {names}, which the revision does not give.',
    remedy: 'Enter what is missing.',
  },
  // ladders of test cards
  'ladder.unknown': {
    reason: 'there is no {kind} “{id}”.',
    remedy: 'Use one of: {known}.',
  },
  'ladder.not-carried': {
    reason: 'run {number} cannot count for this card: {detail}.',
    remedy: 'Run the test on this revision.',
  },
  // test cards
  'card.figure-unknown': {
    reason: 'the card uses {names}, which the revision does not give.',
    remedy: 'Enter what is missing, or take it off the card.',
  },
  'card.not-issued': {
    reason: 'the card is still a draft.',
    remedy: 'Issue it first, so that its predictions are fixed before the run.',
  },
  'card.issued': {
    reason: 'the card was issued by {by} and does not change.',
    remedy: 'Make a new card.',
  },
  'card.stale': {
    reason: 'the card’s predictions belong to an earlier state of revision {letter}.',
    remedy: 'Make and issue a new card.',
  },
  // log entries
  'entry.too-long': {
    reason: 'the text would have more than {limit} characters.',
    remedy: 'Go on in a new entry, or attach the long part as a file.',
  },
  // calculations in log entries, as a whole
  'calc.stopped': {
    reason: 'it was not finished after {limit} s and was stopped.',
    remedy: 'Make it shorter or divide it into several; the rest of the entry is not touched.',
  },
  'calc.not-started': {
    reason: 'calculating could not be started: {detail}.',
    remedy: 'Close the window and open it again; the text is kept.',
  },
  'calc.given-above': {
    reason: '“{name}” is given by a calculation above already.',
    remedy: 'Choose another name.',
  },
  // reports
  'report.bad-date': {
    reason: 'the date of issue “{text}” cannot be read.',
    remedy: 'Give it as year-month-day, with the time after a T.',
  },
  'report.unknown-character': {
    reason: 'the typeface has no “{character}” ({code}), used in “{near}”.',
    remedy: 'Replace that character, or let the report print its number instead.',
  },
  'report.unreadable-picture': {
    reason: 'the picture cannot be printed: {detail}.',
    remedy: 'Attach it again from the original file, as PNG or JPEG.',
  },
} as const satisfies Record<string, { reason: string; remedy: string }>;

export type ProblemCode = keyof typeof catalogue;
