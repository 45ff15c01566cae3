/** The mass balance of each crop over a year, or of one crop over any days. */
import { roundForJson, type ToldBalance, told } from '@leywright/api';
import { asDay, type Day, yearOf } from '@leywright/measures';
import { proof } from '@leywright/planner';
import { openFarm, planWishOf } from '../farm/open-farm.ts';
import { type ExitCode, type Io, printJson, refuse } from '../io.ts';
import { textTable, wrapped } from '../tables/text-table.ts';
import { said } from '../words.ts';
import { entriesKnown, type ProofWish, parseProofWish } from './proof-wish.ts';

export async function balanceCommand(args: readonly string[], io: Io): Promise<ExitCode> {
  const parsed = parseProofWish(args, 1, io);
  if (parsed.kind === 'problems') return refuse(io, parsed.sentences);
  const { wish } = parsed;
  const opened = await openFarm({ ...wish, name: wish.words[0] }, io);
  if (typeof opened === 'number') return opened;
  const { from, to } = periodOf(wish, planWishOf(wish, opened).today);
  const chain = proof.followFarm(opened.farm, entriesKnown(opened, wish.knownOn));
  const crops = wish.crop === null ? proof.cropsBetween(chain, from, to) : [wish.crop];
  const given = { farm: opened.farm, cropName: proof.cropNameOf(opened.farm), knownOn: wish.knownOn };
  const balances = crops.map((crop) =>
    told.tellBalance(
      proof.balanceOf(chain, { crop, from, to, status: wish.status }),
      proof.farmYieldCheck(opened.farm, chain, { crop, from, to }),
      given,
    ),
  );
  if (balances.length === 0) return refuse(io, [said.noLots]);
  if (wish.json) printJson(io, roundForJson({ balances }));
  else io.out(balancesText(balances));
  return balances.some((one) => one.judged === 'alarm') ? 1 : 0;
}

/** The days asked for, else the year, else this year up to today. */
function periodOf({ fromDay, toDay, year }: ProofWish, today: Day): { readonly from: Day; readonly to: Day } {
  const inYear = year ?? yearOf(today);
  const end = asDay(`${inYear}-12-31`);
  return { from: fromDay ?? asDay(`${inYear}-01-01`), to: toDay ?? (end > today ? today : end) };
}

const kilos = (kg: number) => String(Math.round(kg));

function balancesText(balances: readonly ToldBalance[]): string {
  const [first] = balances;
  const head = `Mass balance in kg, ${first?.from} to ${first?.to}${first?.knownOn === null ? '' : `, as known on ${first?.knownOn}`}`;
  const right = 'right' as const;
  const columns = ['Opening', 'In', 'Boxes', 'Sold', 'Graded out', 'Lost', 'Not packed', 'Closing', 'Not acc.'];
  const table = textTable(
    [{ head: 'Crop' }, ...columns.map((one) => ({ head: one, align: right }))],
    balances.map(({ cropName, openingKg, termsKg, closingKg, notPackedKg, notAccountedKg }) => [
      cropName,
      kilos(openingKg),
      kilos(termsKg.harvested + termsKg.bought),
      kilos(termsKg.boxes),
      kilos(termsKg.sale + termsKg['own-use'] + termsKg.gift + termsKg.seed),
      kilos(termsKg['graded-out']),
      kilos(termsKg.compost + termsKg.loss),
      kilos(notPackedKg),
      kilos(closingKg),
      kilos(notAccountedKg),
    ]),
  );
  return [head, table, balances.map((one) => wrapped(one.sentence)).join('\n')].join('\n\n');
}
