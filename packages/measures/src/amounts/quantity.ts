/** Which sign stands before the decimals in a file: 1.5 or 1,5. */
export const decimalSigns = ['point', 'comma'] as const;
export type DecimalSign = (typeof decimalSigns)[number];

export type ReadNumber =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'ambiguous'; readonly readings: readonly [asDecimals: number, asThousands: number] }
  | { readonly kind: 'not-a-number' };

const spaces = /(?<=\d)[ \u00a0\u2009\u202f'’](?=\d{3}(?!\d))/g;
const exponentForm = /^[+-]?\d+(\.\d+)?e[+-]?\d+$/i;

/**
 * Reads a number as people and spreadsheets write it.
 *
 * With no decimal sign known: a single point is the decimal point (1.234 is a little over one); a single comma is a decimal comma unless
 * exactly three digits follow it (1,234), which could be either and comes back as ambiguous with both readings; two kinds of sign settle
 * each other (1.234,5 and 1,234.5). With a decimal sign known from the file, the other sign can only part thousands.
 * Spaces and apostrophes part thousands in any file. A unit, a percent sign or an empty cell is not a number.
 */
export function readNumber(text: string, decimals: DecimalSign | null = null): ReadNumber {
  const plain = text.trim().replace(/^[−–]/, '-').replace(spaces, '');
  if (exponentForm.test(plain)) return asNumber(plain);
  if (!/^[+-]?(\d[\d.,]*|[.,]\d+)$/.test(plain)) return { kind: 'not-a-number' };
  if (decimals === 'point') return withSigns(plain, '.', ',');
  if (decimals === 'comma') return withSigns(plain, ',', '.');
  const points = plain.split('.').length - 1;
  const commas = plain.split(',').length - 1;
  if (points > 0 && commas > 0)
    return plain.lastIndexOf('.') > plain.lastIndexOf(',') ? withSigns(plain, '.', ',') : withSigns(plain, ',', '.');
  if (commas === 0) return points > 1 ? withSigns(plain, ',', '.') : withSigns(plain, '.', ',');
  if (commas > 1) return withSigns(plain, '.', ',');
  const asDecimals = withSigns(plain, ',', '.');
  const asThousands = withSigns(plain, '.', ',');
  if (asDecimals.kind === 'number' && asThousands.kind === 'number')
    return { kind: 'ambiguous', readings: [asDecimals.value, asThousands.value] };
  return asDecimals;
}

function withSigns(text: string, decimal: '.' | ',', thousands: '.' | ','): ReadNumber {
  const [whole = '', fraction, ...more] = text.split(decimal);
  if (more.length > 0 || fraction?.includes(thousands)) return { kind: 'not-a-number' };
  const groups = whole.replace(/^[+-]/, '').split(thousands);
  const first = groups[0] ?? '';
  // 0,123 cannot part thousands: nobody writes a leading nought before a group of three.
  const grouped =
    groups.length === 1 || (/^[1-9]\d{0,2}$/.test(first) && groups.slice(1).every((group) => /^\d{3}$/.test(group)));
  if (!grouped) return { kind: 'not-a-number' };
  return asNumber(`${whole.replaceAll(thousands, '')}.${fraction ?? ''}0`);
}

function asNumber(text: string): ReadNumber {
  const value = Number(text);
  return Number.isFinite(value) ? { kind: 'number', value } : { kind: 'not-a-number' };
}
