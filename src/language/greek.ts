/** The Greek letters that names use, with their names; a capital letter has its name with a capital. */
const letters: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  iota: 'ι',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  xi: 'ξ',
  omicron: 'ο',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  upsilon: 'υ',
  phi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
};

const spellings = new Map<string, string>();
for (const [name, letter] of Object.entries(letters)) {
  spellings.set(letter, name);
  spellings.set(letter.toUpperCase(), `${name.charAt(0).toUpperCase()}${name.slice(1)}`);
}
const letterOf = new Map([...spellings].map(([letter, name]) => [name, letter]));

/** A text with its Greek letters written out: `γ_w` as `gamma_w`. */
export function spelledOut(text: string): string {
  return /[Α-ω]/.test(text) ? [...text].map((letter) => spellings.get(letter) ?? letter).join('') : text;
}

/** Latin letters that people write for a Greek one beside the first of its name. */
const alike = new Map(
  Object.entries({
    γ: 'y',
    ε: 'e',
    η: 'nh',
    θ: 'qO',
    μ: 'u',
    ν: 'v',
    ρ: 'p',
    σ: 'o',
    φ: 'f',
    χ: 'x',
    ψ: 'y',
    ω: 'w',
  }),
);

/** Whether a name is another one with Latin letters in place of its Greek ones: `g_i` for γ_i, `w` for ω. */
export function looksGreek(written: string, name: string): boolean {
  if (written.length !== name.length || written === name) return false;
  return [...name].every((letter, at) => {
    const found = written.charAt(at);
    const spelled = spellings.get(letter)?.charAt(0);
    return (
      found === letter || (spelled !== undefined && `${spelled}${alike.get(letter) ?? ''}`.includes(found))
    );
  });
}

/** A name with the letters that are written out in it, as words of their own: `gamma_w` as `γ_w`; itself if none is. */
export function withGreek(name: string): string {
  return name.replace(/\p{Script=Latin}+/gu, (word) => letterOf.get(word) ?? word);
}
