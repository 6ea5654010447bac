/** The editor's languages: Markdown as `markdown-grammar.ts` has it, with calculations coloured inside their fences. */
import {
  defineLanguageFacet,
  HighlightStyle,
  Language,
  LanguageSupport,
  languageDataProp,
  StreamLanguage,
  type StreamParser,
  syntaxHighlighting,
} from '@codemirror/language';
import { tags } from '@lezer/highlight';
import { parseCode } from '@lezer/markdown';
import { entryParser, isCalcInfo } from '../calculation/markdown-grammar.ts';

const NUMBER = /^(\d+\.?\d*|\.\d+)([eE][-+−]?\d+)?/;
const NAME = /^[\p{L}_][\p{L}\p{Nd}_₀-₉]*/u;
const UNIT = /^\s*[\p{L}°%‰][\p{L}\p{Nd}²³⁻¹⁴·⋅/^°%-]*/u;
const WORDS: ReadonlySet<string> = new Set(['in', 'and', 'or', 'not']);

/** Only for the eye: a line is read for its meaning by `quantity/` alone. */
const calcColours: StreamParser<object> = {
  name: 'calc',
  token(stream) {
    if (stream.eatSpace()) return null;
    if (stream.match(/^#.*/)) return 'comment';
    if (stream.match(NUMBER)) {
      const rest = stream.string.slice(stream.pos);
      const word = UNIT.exec(rest)?.[0].trim();
      if (word !== undefined && !WORDS.has(word)) stream.match(UNIT);
      return 'number';
    }
    const name = stream.match(NAME);
    if (name && name !== true) {
      if (WORDS.has(name[0])) return 'keyword';
      if (stream.match(/^\s*=(?!=)/, false)) return 'definition';
      return stream.match(/^\s*\(/, false) ? 'function' : 'name';
    }
    stream.next();
    return 'operator';
  },
  tokenTable: {
    comment: tags.comment,
    number: tags.number,
    keyword: tags.keyword,
    definition: tags.definition(tags.variableName),
    function: tags.function(tags.variableName),
    name: tags.variableName,
    operator: tags.operator,
  },
};

const calcLanguage = StreamLanguage.define(calcColours);

const data = defineLanguageFacet();
const parser = entryParser.configure([
  { props: [languageDataProp.add({ Document: data })] },
  parseCode({ codeParser: (info) => (isCalcInfo(info) ? calcLanguage.parser : null) }),
]);

const style = HighlightStyle.define([
  { tag: tags.heading1, fontWeight: '600', fontSize: '1.25em' },
  { tag: tags.heading2, fontWeight: '600', fontSize: '1.125em' },
  { tag: tags.heading, fontWeight: '600' },
  { tag: tags.strong, fontWeight: '600' },
  { tag: tags.emphasis, fontStyle: 'italic' },
  { tag: tags.strikethrough, textDecoration: 'line-through' },
  { tag: [tags.link, tags.url], color: 'var(--accent)' },
  { tag: tags.quote, color: 'var(--quiet)' },
  { tag: tags.monospace, fontFamily: 'var(--log-code-face)', fontSize: '0.9em' },
  {
    tag: [tags.processingInstruction, tags.contentSeparator, tags.labelName],
    color: 'var(--quiet)',
  },
  { tag: tags.comment, color: 'var(--quiet)', fontStyle: 'italic' },
  { tag: tags.number, color: 'var(--draw-rotor)' },
  { tag: tags.keyword, color: 'var(--accent)', fontWeight: '600' },
  { tag: tags.definition(tags.variableName), fontWeight: '600' },
  { tag: tags.function(tags.variableName), color: 'var(--accent)' },
]);

export function entryLanguage(): LanguageSupport {
  return new LanguageSupport(new Language(data, parser, [], 'markdown'), syntaxHighlighting(style));
}
