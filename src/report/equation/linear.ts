/**
 * An equation on one line of plain text, `tan φ_max = (m_b e)/(M_0 + m_b z_b)`: read aloud in place of the drawing,
 * found by a search, and shown where an equation has not been typeset.
 */

const WORDS: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  varepsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  vartheta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  xi: 'ξ',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  varphi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
  Gamma: 'Γ',
  Delta: 'Δ',
  Theta: 'Θ',
  Lambda: 'Λ',
  Pi: 'Π',
  Sigma: 'Σ',
  Phi: 'Φ',
  Psi: 'Ψ',
  Omega: 'Ω',
  sum: '∑',
  cdot: '·',
  times: '×',
  pm: '±',
  mp: '∓',
  le: '≤',
  leq: '≤',
  ge: '≥',
  geq: '≥',
  ne: '≠',
  neq: '≠',
  approx: '≈',
  infty: '∞',
  to: '→',
  partial: '∂',
  int: '∫',
  degree: '°',
  circ: '°',
  ldots: '…',
  dots: '…',
  lvert: '|',
  rvert: '|',
  vert: '|',
  prime: '′',
  downarrow: '↓',
  uparrow: '↑',
};
const NAMED = new Set([
  'sin',
  'cos',
  'tan',
  'atan',
  'arctan',
  'asin',
  'arcsin',
  'ln',
  'log',
  'exp',
  'min',
  'max',
]);
const SPACES = new Set([',', ';', ':', '!', ' ', 'quad', 'qquad', 'enspace', 'thinspace']);
const SILENT = new Set([
  'left',
  'right',
  'bigl',
  'bigr',
  'Bigl',
  'Bigr',
  'big',
  'Big',
  'displaystyle',
  'textstyle',
  'limits',
  'nolimits',
]);
const ENVIRONMENT = new Set(['begin', 'end']);
const WRAPPERS = new Set(['mathrm', 'text', 'mathit', 'mathbf', 'operatorname', 'textrm']);
const ACCENTS: Readonly<Record<string, string>> = {
  dot: 'd/dt ',
  ddot: 'd²/dt² ',
  bar: 'mean ',
  hat: 'estimated ',
  tilde: '',
};
const RAISED: Readonly<Record<string, string>> = {
  '°': '°',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '-1': '⁻¹',
  '-2': '⁻²',
};

type Token = { readonly kind: 'command' | 'character'; readonly text: string };

export function linearEquation(tex: string): string {
  const tokens = [...tex.matchAll(/\\([a-zA-Z]+|.)|(\s+)|([\s\S])/gu)].map(
    ([, command, space, character]): Token =>
      command !== undefined
        ? { kind: 'command', text: command }
        : { kind: 'character', text: space ? ' ' : (character ?? '') },
  );
  return sequence(tokens)
    .replace(/\s+/g, ' ')
    .replace(/([([|√]) /g, '$1')
    .replace(/ ([)\],;_])/g, '$1')
    .trim();
}

/** Consumes tokens up to a closing brace. Neighbouring symbols are a product and set apart, unless they spell a word. */
function sequence(tokens: Token[], word = false): string {
  let text = '';
  while (tokens.length > 0) {
    const token = tokens[0];
    if (token?.kind === 'character' && token.text === '}') {
      tokens.shift();
      break;
    }
    if (!word && isSpace(token)) {
      tokens.shift();
      continue;
    }
    const next = item(tokens);
    const product = !word && /[\p{L}\p{N}²³⁴)\]]$/u.test(text) && /^[\p{L}√]/u.test(next);
    text += product ? ` ${next}` : next;
  }
  return text;
}

function isSpace(token: Token | undefined): boolean {
  return token?.kind === 'character' && token.text === ' ';
}

function argument(tokens: Token[], word = false): string {
  while (isSpace(tokens[0])) tokens.shift();
  const next = tokens[0];
  if (next?.kind === 'character' && next.text === '{') {
    tokens.shift();
    return sequence(tokens, word).trim();
  }
  return item(tokens).trim();
}

function item(tokens: Token[]): string {
  const token = tokens.shift();
  if (!token) return '';
  if (token.kind === 'command') return command(token.text, tokens);
  switch (token.text) {
    case '{':
      return sequence(tokens);
    case '_':
      return `_${bracketed(argument(tokens), /^[\p{L}\p{N},]+$/u)}`;
    case '^': {
      const exponent = argument(tokens);
      return RAISED[exponent.replace(/^− /, '-')] ?? `^${bracketed(exponent, /^[\p{L}\p{N}]+$/u)}`;
    }
    case '-':
      return ' − ';
    case '+':
    case '=':
    case '<':
    case '>':
      return ` ${token.text} `;
    case '&':
      return ' if ';
    case '~':
      return ' ';
    default:
      return token.text;
  }
}

function command(name: string, tokens: Token[]): string {
  if (name === 'frac' || name === 'tfrac' || name === 'dfrac') {
    const above = argument(tokens);
    const below = argument(tokens);
    return ` ${grouped(above)}/${grouped(below)} `;
  }
  if (name === 'sqrt') return ` √(${argument(tokens)}) `;
  if (ENVIRONMENT.has(name)) {
    argument(tokens, true);
    return name === 'begin' ? ' [ ' : ' ] ';
  }
  if (WRAPPERS.has(name)) {
    const inside = argument(tokens, true);
    return name === 'mathrm' || name === 'operatorname' ? inside : ` ${inside} `;
  }
  if (name in ACCENTS) return ` ${ACCENTS[name] ?? ''}${argument(tokens)}`;
  if (name === '\\') {
    if (tokens[0]?.text === '[') while (tokens.length > 0 && tokens.shift()?.text !== ']');
    return '; ';
  }
  if (name === '{' || name === '}') return name;
  if (SPACES.has(name)) return ' ';
  if (SILENT.has(name)) return '';
  if (NAMED.has(name)) return ` ${name} `;
  const word = WORDS[name];
  if (word === undefined) return ` ${name} `;
  return /\p{L}/u.test(word) ? word : ` ${word} `;
}

function grouped(text: string): string {
  return bracketed(text, /^[\p{L}\p{N}_²³⁴.]+$/u);
}

function bracketed(text: string, plain: RegExp): string {
  return plain.test(text) ? text : `(${text})`;
}
