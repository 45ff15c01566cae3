/** The derivation of one figure: sum, inputs, formula, source, doubt, and what would change it. */
export interface WhyInput {
  readonly name: string;
  readonly value: number | string | null;
  readonly unit: string;
  readonly from: 'farm' | 'record' | 'reference' | 'convention' | 'derived' | 'climate';
  /** Column or file the farm's own figure stands in, or table and row of the reference. */
  readonly where: string | null;
  readonly source: string | null;
  readonly howKnown: 'verified' | 'memory' | 'common practice' | 'own' | null;
  /** Figure id, when this input opens further. */
  readonly why: string | null;
}

export interface Lever {
  readonly change: string;
  readonly value: number | string;
  readonly unit: string;
  readonly result: number;
}

export interface Why {
  readonly id: string;
  /** Key of the sentence in api's words. */
  readonly title: string;
  readonly figures: Readonly<Record<string, string | number | null>>;
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  /** Written with the names of the inputs. */
  readonly formula: string;
  /** The same with figures in it. */
  readonly sum: string;
  readonly inputs: readonly WhyInput[];
  readonly doubt: readonly string[];
  readonly levers: readonly Lever[];
}
