/** What stands before the farm: sign-in, an invitation, or a second factor to set up. */
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { chosenFace, showFace } from '../face.ts';
import type { Me } from './ask.ts';
import { FactorSetUp } from './factor-set-up.tsx';
import { DoorPage } from './fields.tsx';
import { InvitationPage } from './invitation-page.tsx';
import { peopleWords } from './people-words.ts';
import { SignInPage } from './sign-in-page.tsx';
import '../look/style/index.css';
import './people.css';

export function openDoor(element: HTMLElement, me: Me | null): void {
  showFace(chosenFace());
  document.title = `${peopleWords.signIn.title} · Leywright`;
  createRoot(element).render(
    <StrictMode>
      <Door me={me} />
    </StrictMode>,
  );
}

function Door({ me }: { readonly me: Me | null }) {
  if (window.location.pathname === '/invitation') return <InvitationPage />;
  if (me?.visitor?.secondFactor !== 'to-set-up') return <SignInPage />;
  return (
    <DoorPage headline={peopleWords.factor.headline}>
      <FactorSetUp isOn={false} onDone={() => window.location.assign('/')} />
    </DoorPage>
  );
}
