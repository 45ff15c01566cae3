import { useAppState } from '../app-state.tsx';
import { Headline } from '../look/page/headline.tsx';
import { viewOf } from '../places/frame.tsx';
import { FarmPeople } from './farm-people.tsx';
import { OwnAccount } from './own-account.tsx';
import { peopleWords } from './people-words.ts';
import { useWho } from './who.ts';
import './people.css';

/** One's own account, and the people of the farm. */
export function PeoplePlace() {
  const who = useWho();
  const view = viewOf(useAppState().seen);
  const visitor = who?.visitor ?? null;
  const isGrower = who !== null && (who.signIn === 'not-asked' || visitor?.role === 'grower');
  return (
    <div className="people-place">
      <Headline sentence={[{ text: peopleWords.place.headline, strong: true }]} />
      {who === null ? <p className="lead">{peopleWords.outOfReach}</p> : null}
      {visitor === null ? null : <OwnAccount visitor={visitor} />}
      {view === null || who === null ? null : <FarmPeople farm={view.plan.farm.id} isGrower={isGrower} />}
    </div>
  );
}
