/**
 * Sentences with places for figures. `{areaM2}` is filled by the figure of that name, written as its name's ending says;
 * `{areaM2:number}` names another way to write it. What stands in `[ ]` is left out when a figure in it is not known.
 */
export type Figure = string | number | boolean | null | undefined;
export type Figures = Readonly<Record<string, Figure>>;

/** Writes one figure in words of the language. */
export type WriteFigure = (name: string, value: string | number | boolean, way: string | null) => string;

/** One run of a sentence: plain words, or a figure and the name it has in the template. */
export interface Run {
  readonly text: string;
  readonly figure: string | null;
}

const place = /\{([A-Za-z0-9]+)(?::([a-z-]+))?\}/g;
const optional = /\[([^[\]]*)\]/g;
/** Stands where a figure is asked for and not known; a test looks for it. */
export const unknownFigure = '…';

/** What somebody else wrote, a field's name or a cell, is said letter by letter, even where it begins the sentence. */
const asWritten: ReadonlySet<string> = new Set(['field', 'found']);

/** The sentence with its figures. */
export function fill(template: string, figures: Figures, write: WriteFigure): string {
  return runsOf(template, figures, write)
    .map((run) => run.text)
    .join('');
}

/** The same in runs, so that a screen can set the figures apart. */
export function runsOf(template: string, figures: Figures, write: WriteFigure): readonly Run[] {
  const whole = template
    .replace(optional, (_all, part: string) => (figuresIn(part).every((name) => isKnown(figures[name])) ? part : ''))
    .replace(/ {2,}/g, ' ')
    .trim();
  const runs: Run[] = [];
  let from = 0;
  for (const match of whole.matchAll(place)) {
    const [all, name = '', way] = match;
    if (match.index > from) runs.push({ text: whole.slice(from, match.index), figure: null });
    const value = figures[name];
    runs.push({ text: isKnown(value) ? write(name, value, way ?? null) : unknownFigure, figure: name });
    from = match.index + all.length;
  }
  if (from < whole.length) runs.push({ text: whole.slice(from), figure: null });
  return runs.map((run, at) =>
    at === 0 && !asWritten.has(run.figure ?? '') ? { ...run, text: capitalised(run.text) } : run,
  );
}

/** Names of all figures a template asks for. */
export function figuresIn(template: string): readonly string[] {
  return [...template.matchAll(place)].map((match) => match[1] ?? '');
}

/** Names of the figures a template cannot do without. */
export function figuresNeeded(template: string): readonly string[] {
  return figuresIn(template.replace(optional, ''));
}

function isKnown(value: Figure): value is string | number | boolean {
  return value !== null && value !== undefined && value !== '';
}

function capitalised(sentence: string): string {
  return sentence.charAt(0).toLocaleUpperCase('en') + sentence.slice(1);
}
