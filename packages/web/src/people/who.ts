/** Who is signed in, for the places that show it. */
import { createContext, useContext } from 'react';
import type { Me } from './ask.ts';

/** Null while the server is not reached. */
export const WhoContext = createContext<Me | null>(null);

export function useWho(): Me | null {
  return useContext(WhoContext);
}
