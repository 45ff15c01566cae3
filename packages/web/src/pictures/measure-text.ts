/** Width in px of a label in the app's text face at a size and a width setting. */
export type MeasureText = (text: string, sizePx: number, stretch: 'normal' | 'narrow') => number;

let pen: CanvasRenderingContext2D | null = null;

/** Measures with the fonts the page has loaded. */
export const measureOnScreen: MeasureText = (text, sizePx, stretch) => {
  pen ??= document.createElement('canvas').getContext('2d');
  if (pen === null) return text.length * sizePx * 0.52;
  pen.font = `500 ${sizePx}px "Archivo Variable", system-ui, sans-serif`;
  const full = pen.measureText(text).width;
  // Archivo at 88 % of its width draws its letters, but not their side space, narrower: measured 0.92 of the normal run.
  return stretch === 'narrow' ? full * 0.92 : full;
};
