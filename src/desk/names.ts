/** The name of a notebook is the name of its folder, so it has to be one on every computer it may travel to. */
import { bad, good, type Result } from '../quantity/index.ts';

const reserved = /^(con|prn|aux|nul|conin\$|conout\$|(com|lpt)[0-9¹²³])$/i;
/** Files that stand beside the notebooks. */
const taken = /^settings\.json/i;

/** The name in normal form (NFC), or what is wrong with it. */
export function notebookName(typed: string): Result<string> {
  const name = typed.normalize('NFC');
  const detail = fault(name);
  return detail === undefined
    ? good(name)
    : bad('notebook.bad-name', 'Name of the notebook', { name: name.slice(0, 60), detail });
}

function fault(name: string): string | undefined {
  if (name === '') return 'it is empty';
  if ([...name].length > 120 || Buffer.byteLength(name) > 200) return 'it is too long';
  if (/\p{Cs}/u.test(name)) return 'it holds half a character';
  if (/\p{Cc}|\p{Cf}|\p{Zl}|\p{Zp}/u.test(name)) return 'it holds an invisible character';
  const sign = /[/\\:*?"<>|]/.exec(name)?.[0];
  if (sign !== undefined) return `it holds “${sign}”`;
  if (name.startsWith('.')) return 'it begins with a dot';
  if (/^\s|[\s.]$/u.test(name)) return 'it begins with a space, or ends with a space or a dot';
  if (reserved.test(name.split('.')[0]?.trimEnd() ?? '')) return 'it is the name of a device';
  if (taken.test(name)) return 'it is the name of a file of this program';
  return undefined;
}
