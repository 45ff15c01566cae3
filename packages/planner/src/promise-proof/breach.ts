/** What a plan does against what was asked, found by the plain checker. */

export interface PromiseBreach {
  readonly rule:
    | 'cut-more-than-stands'
    | 'more-out-than-in'
    | 'store-does-not-add-up'
    | 'portion'
    | 'slot'
    | 'box'
    | 'too-many-weeks-running'
    | 'ground'
    | 'store-too-full'
    | 'hands'
    | 'pinned';
  readonly place: string;
  readonly week: number;
  readonly byAmount: number;
  readonly byUnit: 'kg' | 'm2' | 'h' | 'items' | 'share' | 'money';
}
