import { RouterProvider } from '@tanstack/react-router';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { AppStateProvider } from './app-state.tsx';
import { chosenFace, showFace } from './face.ts';
import { Patterns } from './look/marks/patterns.tsx';
import type { Me } from './people/ask.ts';
import { WhoContext } from './people/who.ts';
import { router } from './routes.tsx';
import type { PlanSource } from './worker/plan-source.ts';
import './look/style/index.css';

const longestFontWaitMs = 900;

/** Draws the app over a source of plans. Waits a moment for the fonts, since labels are placed by their measured width. */
export async function startApp(
  element: HTMLElement,
  { source, who }: { readonly source: PlanSource; readonly who: Me | null },
): Promise<void> {
  showFace(chosenFace());
  const fonts = Promise.all(
    ['500 12px "Archivo Variable"', '700 17px Besley', '400 28px Besley', '900 27px Besley'].map((font) =>
      document.fonts.load(font),
    ),
  );
  await Promise.race([fonts, new Promise((resolve) => setTimeout(resolve, longestFontWaitMs))]);
  createRoot(element).render(
    <StrictMode>
      <Patterns />
      <AppStateProvider source={source}>
        <WhoContext value={who}>
          <RouterProvider router={router} />
        </WhoContext>
      </AppStateProvider>
    </StrictMode>,
  );
}
