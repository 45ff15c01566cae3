import { Navigate } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useAppState } from '../app-state.tsx';
import { Headline } from '../look/page/headline.tsx';
import { StateFrame } from '../look/page/state-frame.tsx';
import type { FarmView } from '../worker/plan-source.ts';
import { viewOf } from './frame.tsx';

/** Draws a place once there is a view of the farm; before that says truly how things stand. */
export function WithFarm({ children }: { readonly children: (view: FarmView) => ReactNode }) {
  const { seen } = useAppState();
  const view = viewOf(seen);
  if (view !== null) return children(view);
  if (seen.kind === 'working')
    return (
      <>
        <Headline sentence={[{ text: seen.sentence }]} />
        <StateFrame state={{ kind: 'working', sentence: '' }} height={480}>
          {null}
        </StateFrame>
      </>
    );
  if (seen.kind === 'failed')
    return (
      <StateFrame state={{ kind: 'failed', sentence: seen.sentence }} height={200}>
        {null}
      </StateFrame>
    );
  return <Navigate to="/start" replace />;
}
