/** Shapes for those who sign in, for invitations, and for households. */
import { roles } from '@leywright/book';
import { readDay } from '@leywright/measures';
import { z } from 'zod';

const day = z.string().refine((text) => readDay(text) !== null);
const role = z.enum(roles);
const words = z.string().trim().min(1).max(200);
const secret = z.string().min(1).max(1000);
const code = z.string().max(100);

export const person = z
  .object({
    farm: z.string(),
    person: z.string(),
    name: z.string(),
    role,
    asKnownOn: z.string().nullable().meta({ description: 'A looker sees what was known by the end of this day.' }),
    secondFactor: z.enum(['on', 'off', 'to-set-up']),
    recoveryCodesLeft: z.number(),
  })
  .meta({
    id: 'SignedIn',
    description: 'Who is signed in. A grower whose second factor is to set up reaches their own account alone.',
  });

export const me = z.object({ signIn: z.enum(['asked', 'not-asked']), visitor: person.nullable() }).meta({
  id: 'Me',
  description:
    'Whether this server asks for sign-in, and who is signed in; null before sign-in, and where nothing is asked.',
});

export const signIn = z
  .object({
    farm: z
      .string()
      .max(200)
      .nullish()
      .meta({ description: 'Id of the farm; may be left out where the store has one farm alone.' }),
    person: z.string().max(200),
    password: z.string().max(1000),
    code: code.nullish().meta({ description: 'Six digits of the authenticator, or a recovery code.' }),
  })
  .meta({ id: 'SignIn' });

export const newPassword = z.object({ password: secret, newPassword: secret }).meta({ id: 'NewPassword' });
export const passwordAgain = z
  .object({ password: secret })
  .meta({ id: 'PasswordAgain', description: 'The password once more, for what matters.' });
export const factorBeginning = z
  .object({
    password: secret,
    code: code.nullish().meta({ description: 'Of the second factor that is on; else left out.' }),
  })
  .meta({ id: 'FactorBeginning' });
export const factorCode = z.object({ code }).meta({ id: 'FactorCode' });
export const factorRemoval = z.object({ password: secret, code }).meta({ id: 'FactorRemoval' });

export const newFactor = z.object({ secret: z.string(), address: z.string() }).meta({
  id: 'NewFactor',
  description: 'What an authenticator takes. Shown once; it counts when a code of it was given.',
});
export const recoveryCodes = z
  .object({ recoveryCodes: z.array(z.string()) })
  .meta({ id: 'RecoveryCodes', description: 'Each opens once. Shown once; new ones put the old out.' });

export const sessions = z
  .object({
    sessions: z.array(
      z.object({
        id: z.string(),
        madeAt: z.string(),
        seenAt: z.string(),
        endsAt: z.string(),
        device: z.string(),
        isThis: z.boolean(),
      }),
    ),
  })
  .meta({ id: 'Sessions', description: 'Browsers in which a person is signed in.' });

export const people = z
  .object({
    people: z.array(
      z.object({
        person: z.string(),
        name: z.string(),
        role,
        account: z
          .object({
            asKnownOn: z.string().nullable(),
            secondFactor: z.enum(['on', 'off']),
            endedAt: z.string().nullable(),
          })
          .nullable()
          .meta({ description: 'For growers; null when the person cannot sign in, and for everyone else.' }),
      }),
    ),
  })
  .meta({ id: 'People', description: 'Names for the ids that stand in the book.' });

export const personChange = z
  .object({ name: words.optional(), role: role.optional(), asKnownOn: day.nullish(), mayEnter: z.boolean().optional() })
  .meta({ id: 'PersonChange', description: '`mayEnter: false` ends the account and every session of it.' });

export const newInvitation = z
  .object({
    person: z.string().max(64),
    name: words,
    role,
    asKnownOn: day.nullish(),
    days: z.number().int().min(1).max(30).nullish(),
  })
  .meta({ id: 'NewInvitation', description: 'For someone who has an account it is a link to a new password.' });

const invitation = z.object({
  id: z.string(),
  person: z.string(),
  name: z.string(),
  role,
  asKnownOn: z.string().nullable(),
  madeBy: z.string(),
  endsAt: z.string(),
});
export const invited = z.object({ invitation, link: z.string() }).meta({
  id: 'Invited',
  description: 'The link is shown once. What follows # in it is not sent to any server when it is opened.',
});
export const invitations = z.object({ invitations: z.array(invitation) }).meta({ id: 'Invitations' });

const link = z.string().max(2000).meta({ description: 'The link, or what follows # in it.' });
export const invitationLink = z.object({ link }).meta({ id: 'InvitationLink' });
export const invitationSeen = z
  .object({ farm: z.string(), farmName: z.string(), person: z.string(), name: z.string(), role, endsAt: z.string() })
  .meta({ id: 'InvitationSeen' });
export const acceptance = z.object({ link, password: secret }).meta({ id: 'Acceptance' });
export const accepted = z.object({ farm: z.string(), person: z.string() }).meta({ id: 'Accepted' });

const fact = z.string().trim().max(500).nullable();
const householdPerson = z.object({
  name: words,
  email: fact,
  phone: fact,
  address: fact,
  without: z.array(z.string().trim().max(100)).max(100),
  note: z.string().max(2000).nullable(),
});
export const newHousehold = z
  .object({
    size: z.string().trim().min(1).max(64),
    drop: fact,
    from: day,
    to: day.nullable(),
    person: householdPerson,
  })
  .meta({ id: 'NewHousehold' });
export const household = z
  .object({
    id: z.string(),
    size: z.string(),
    drop: z.string().nullable(),
    from: z.string(),
    to: z.string().nullable(),
    erasedAt: z.string().nullable(),
    person: householdPerson.nullable(),
  })
  .meta({
    id: 'Household',
    description: 'Kept apart from the book. `person` is null once it was erased; size, drop and days count on.',
  });
export const households = z
  .object({ households: z.array(household), bySize: z.record(z.string(), z.number()) })
  .meta({ id: 'Households', description: '`bySize` counts those who have a box now, erased ones among them.' });
export const householdExport = z
  .object({
    farm: z.string(),
    farmName: z.string(),
    household,
    exportedAt: z.string(),
    keptFor: z.string(),
    keptUntil: z.string().nullable(),
  })
  .meta({ id: 'HouseholdExport', description: 'Everything kept about a household, to be handed to them.' });

export const done = z.object({ done: z.literal(true) }).meta({ id: 'Done' });
