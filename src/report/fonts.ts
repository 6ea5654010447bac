/**
 * The typefaces of reports and drawings: Source Sans 3, the same files in the window and in the PDF. The bytes
 * come from the caller, since a report knows neither a file system nor a bundler.
 */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
  readonly italic: Uint8Array;
}

export type Face = keyof Fonts;

/** The package that the files are in, and their paths inside it. */
export const fontPackage = '@expo-google-fonts/source-sans-3';
export const fontFiles: Readonly<Record<Face, string>> = {
  regular: '400Regular/SourceSans3_400Regular.ttf',
  semibold: '600SemiBold/SourceSans3_600SemiBold.ttf',
  italic: '400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
};
