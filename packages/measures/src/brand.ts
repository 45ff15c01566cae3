declare const brand: unique symbol;

/** A text or number that only its own reader may make, so that a plot's id cannot be handed over as a person's. */
export type Branded<T, B extends string> = T & { readonly [brand]: B };
