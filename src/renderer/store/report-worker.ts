/** Draws reports away from the window: the PDF library, the typefaces and the work stay in here. */
import '../no-code-from-text.ts';
import regular from '@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url';
import italic from '@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf?url';
import semibold from '@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url';
import { expose, transfer } from 'comlink';
import { good, type Result } from '../../quantity/index.ts';
import type { ReportDocument } from '../../report/index.ts';
import { renderPdf } from '../../report/pdf/index.ts';

export interface ReportWorker {
  render(document: ReportDocument): Promise<Result<Uint8Array<ArrayBuffer>>>;
}

let fonts: Promise<Parameters<typeof renderPdf>[1]> | undefined;

async function loadFonts() {
  const [regularBytes, semiboldBytes, italicBytes] = await Promise.all(
    [regular, semibold, italic].map(bytesAt),
  );
  if (!regularBytes || !semiboldBytes || !italicBytes) throw new Error('a typeface is missing');
  return { regular: regularBytes, semibold: semiboldBytes, italic: italicBytes };
}

async function bytesAt(address: string): Promise<Uint8Array> {
  return new Uint8Array(await (await fetch(address)).arrayBuffer());
}

const worker: ReportWorker = {
  async render(document) {
    fonts ??= loadFonts();
    const drawn = await renderPdf(document, await fonts);
    if (!drawn.ok) return drawn;
    const bytes = new Uint8Array(drawn.value);
    return transfer(good(bytes), [bytes.buffer]);
  },
};

expose(worker);
