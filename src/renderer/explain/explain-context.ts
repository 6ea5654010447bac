/** Any component can ask for the sheet that explains a number. */
import { createContext, useContext } from 'react';

export interface Explained {
  readonly kind: 'figure' | 'margin';
  readonly id: string;
}

export const ExplainContext = createContext<(explained: Explained) => void>(() => undefined);

export function useExplain(): (explained: Explained) => void {
  return useContext(ExplainContext);
}
